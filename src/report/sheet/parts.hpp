#pragma once

#include "plan/plan.hpp"
#include "report/text_layout.hpp"
#include "report/text_style.hpp"

namespace bulbwright::report {

/// The parts of plan_text(), each in a file of its own. A part with nothing to say is no line.

/// How closely a document is set: 0 airy, up to closest_layout; plan_text() takes the first that
/// keeps the document under its limit of lines.
struct SheetLayout {
  const TextStyle& style;
  int width = 80;
  int closeness = 0;
};
inline constexpr int closest_layout = 7;

/// Column on which the text of labelled parts starts ("Dates        15 Sep ...").
inline constexpr int label_indent = 13;

/// From this closeness on a label stands in its paragraph instead of beside it.
inline constexpr int labels_inside = 4;

/// "Buy          22 Triumph tulips ...": `text` beside `label`, or behind it when set close. No
/// line for an empty text.
Lines labelled(const char* label, const std::string& text, const SheetLayout& layout);

/// The texts one to a line beside `label`, or as one flowing text when set close.
Lines one_by_one(const char* label, const std::vector<std::string>& texts,
                 const SheetLayout& layout);

Lines heading_lines(const Plan& plan, const SheetLayout& layout);  ///< pot, season, place
Lines verdict_lines(const Plan& plan,
                    const SheetLayout& layout);                 ///< can it be done, days in flower
Lines note_lines(const Plan& plan, const SheetLayout& layout);  ///< the grower's own words
Lines step_lines(const Plan& plan, const SheetLayout& layout);  ///< fill and plant, bottom first
Lines drawing_lines(const Plan& plan, const SheetLayout& layout);  ///< side view to scale
Lines buy_lines(const Plan& plan, const SheetLayout& layout);      ///< bulbs to buy, set close
Lines refrigerator_lines(const Plan& plan, const SheetLayout& layout);
Lines date_lines(const Plan& plan, const SheetLayout& layout);
Lines bloom_lines(const Plan& plan, const SheetLayout& layout);  ///< bar chart by week
Lines material_lines(const Plan& plan, const SheetLayout& layout);
Lines notice_lines(const Plan& plan, const SheetLayout& layout);
Lines caution_lines(const Plan& plan, const SheetLayout& layout);

}  // namespace bulbwright::report
