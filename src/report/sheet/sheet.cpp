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

Lines sheet_of(const Plan& plan, const Setting& setting) {
  const bool airy = setting.closeness < 2;
  Sheet sheet;
  sheet.add(heading_lines(plan, setting));
  sheet.add(verdict_lines(plan, setting), airy);
  sheet.add(step_lines(plan, setting));
  sheet.add(drawing_lines(plan, setting));
  sheet.add(buy_lines(plan, setting), setting.closeness < 6);
  sheet.add(refrigerator_lines(plan, setting), airy);
  sheet.add(date_lines(plan, setting), airy);
  sheet.add(bloom_lines(plan, setting));
  sheet.add(material_lines(plan, setting), setting.closeness < 6);
  sheet.add(notice_lines(plan, setting), airy);
  sheet.add(caution_lines(plan, setting), setting.closeness < labels_inside);
  return sheet.lines();
}

}  // namespace

Lines labelled(const char* label, const std::string& text, const Setting& setting) {
  if (text.empty()) return {};
  Lines lines;
  if (setting.closeness < labels_inside) {
    lines = hanging(label, text, label_indent, setting.width);
  } else {
    lines = wrap(std::string{label} + ": " + text, setting.width - 2);
    for (std::size_t i = 1; i < lines.size(); ++i) lines[i].insert(0, "  ");
  }
  lines[0] = bold(label, setting.style) + lines[0].substr(std::string_view{label}.size());
  return lines;
}

std::string plan_text(const Plan& plan, const TextStyle& style) {
  Lines lines;
  for (int closeness = 0; closeness <= closest_setting; ++closeness) {
    lines = sheet_of(plan, Setting{style, text_width(style), closeness});
    if (lines.size() <= most_lines) break;
  }
  return joined(lines);
}

}  // namespace bulbwright::report
