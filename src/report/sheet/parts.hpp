#pragma once

#include "plan/plan.hpp"
#include "report/text_layout.hpp"
#include "report/text_style.hpp"

namespace bulbwright::report {

/// The parts of plan_text(), each in a file of its own. A part with nothing to say is no line.

/// How closely a document is set: 0 airy, up to closest_setting; plan_text() takes the first that
/// keeps the document under its limit of lines.
struct Setting {
  const TextStyle& style;
  int width = 80;
  int closeness = 0;
};
inline constexpr int closest_setting = 7;

/// Column on which the text of labelled parts starts ("Dates        15 Sep ...").
inline constexpr int label_indent = 13;

/// From this closeness on a label stands in its paragraph instead of beside it.
inline constexpr int labels_inside = 4;

/// "Buy          22 Triumph tulips ...": `text` beside `label`, or behind it when set close. No
/// line for an empty text.
Lines labelled(const char* label, const std::string& text, const Setting& setting);

Lines heading_lines(const Plan& plan, const Setting& setting);  ///< pot, season, place
Lines verdict_lines(const Plan& plan, const Setting& setting);  ///< can it be done, days in flower
Lines step_lines(const Plan& plan, const Setting& setting);     ///< fill and plant, bottom first
Lines drawing_lines(const Plan& plan, const Setting& setting);  ///< side view to scale
Lines buy_lines(const Plan& plan, const Setting& setting);      ///< bulbs to buy, set close
Lines refrigerator_lines(const Plan& plan, const Setting& setting);
Lines date_lines(const Plan& plan, const Setting& setting);
Lines bloom_lines(const Plan& plan, const Setting& setting);  ///< bar chart by week
Lines material_lines(const Plan& plan, const Setting& setting);
Lines notice_lines(const Plan& plan, const Setting& setting);
Lines caution_lines(const Plan& plan, const Setting& setting);

}  // namespace bulbwright::report
