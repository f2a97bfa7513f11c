#include "report/sheet/sheet.hpp"

#include "report/sheet/parts.hpp"

namespace bulbwright::report {
namespace {

/// A sheet of paper's worth; the bench copy is printed or read without scrolling twice.
constexpr std::size_t most_lines = 69;

/// Parts one under the other, a blank line between two that stand apart.
class Sheet {
 public:
  void add(const Lines& part, bool apart = true) {
    if (part.empty()) return;
    if (apart && !lines_.empty()) lines_.emplace_back();
    append(lines_, part);
  }
  [[nodiscard]] const Lines& lines() const { return lines_; }

 private:
  Lines lines_;
};

Lines sheet_of(const Plan& plan, const SheetLayout& layout) {
  const bool airy = layout.closeness < 2;
  Sheet sheet;
  sheet.add(heading_lines(plan, layout));
  sheet.add(note_lines(plan, layout), airy);
  sheet.add(verdict_lines(plan, layout), airy);
  if (!plan.ok) {  // what cannot be planted has no steps, dates or shopping
    sheet.add(notice_lines(plan, layout));
    return sheet.lines();
  }
  sheet.add(step_lines(plan, layout));
  sheet.add(drawing_lines(plan, layout));
  sheet.add(buy_lines(plan, layout), layout.closeness < 6);
  sheet.add(refrigerator_lines(plan, layout), airy);
  sheet.add(date_lines(plan, layout), airy);
  sheet.add(bloom_lines(plan, layout));
  sheet.add(material_lines(plan, layout), layout.closeness < 6);
  sheet.add(notice_lines(plan, layout), airy);
  sheet.add(caution_lines(plan, layout), layout.closeness < labels_inside);
  return sheet.lines();
}

}  // namespace

Lines labelled(const char* label, const std::string& text, const SheetLayout& layout) {
  if (text.empty()) return {};
  Lines lines;
  if (layout.closeness < labels_inside) {
    lines = hanging(label, text, label_indent, layout.width);
  } else {
    lines = wrap(std::string{label} + ": " + text, layout.width - 2);
    for (std::size_t i = 1; i < lines.size(); ++i) lines[i].insert(0, "  ");
  }
  lines[0] = bold(label, layout.style) + lines[0].substr(std::string_view{label}.size());
  return lines;
}

Lines one_by_one(const char* label, const std::vector<std::string>& texts,
                 const SheetLayout& layout) {
  if (layout.closeness >= 1) {
    std::string all;
    for (const std::string& text : texts) all += (all.empty() ? "" : " ") + text;
    return labelled(label, all, layout);
  }
  Lines lines;
  for (const std::string& text : texts) {
    append(lines, labelled(lines.empty() ? label : "", text, layout));
  }
  return lines;
}

std::string plan_text(const Plan& plan, const TextStyle& style) {
  Lines lines;
  for (int closeness = 0; closeness <= closest_layout; ++closeness) {
    lines = sheet_of(plan, SheetLayout{style, text_width(style), closeness});
    if (lines.size() <= most_lines) break;
  }
  return joined(lines);
}

}  // namespace bulbwright::report
