#include "report/plan_text.hpp"

#include "report/plan_text_parts.hpp"

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
  sheet.add(buy_lines(plan, setting));
  sheet.add(refrigerator_lines(plan, setting), airy);
  sheet.add(date_lines(plan, setting), airy);
  sheet.add(bloom_lines(plan, setting));
  sheet.add(material_lines(plan, setting));
  sheet.add(notice_lines(plan, setting), airy);
  sheet.add(caution_lines(plan, setting), setting.closeness < 4);
  return sheet.lines();
}

}  // namespace

std::string plan_text(const Plan& plan, const TextStyle& style) {
  Lines lines;
  for (int closeness = 0; closeness <= closest_setting; ++closeness) {
    lines = sheet_of(plan, Setting{style, text_width(style), closeness});
    if (lines.size() <= most_lines) break;
  }
  return joined(lines);
}

}  // namespace bulbwright::report
