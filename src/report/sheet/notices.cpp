#include <fmt/core.h>

#include "report/notice_text.hpp"
#include "report/sheet/parts.hpp"
#include "report/sheet/words.hpp"

namespace bulbwright::report {
namespace {

/// Notes printed when there is no room for all.
constexpr std::size_t most_notes = 3;

}  // namespace

Lines notice_lines(const Plan& plan, const SheetLayout& layout) {
  std::vector<std::string> warnings, notes;
  for (const Notice& notice : layout.closeness >= 1 ? merged(plan.notices) : plan.notices) {
    if (notice.severity == Severity::refusal && !plan.ok) continue;
    (notice.severity == Severity::note ? notes : warnings)
        .push_back(sentence(in_style(notice_text(notice, layout.style), layout.style)));
  }
  if (layout.closeness >= closest_layout && notes.size() > most_notes) {
    const std::size_t more = notes.size() - most_notes;
    notes.resize(most_notes);
    notes.push_back(fmt::format("{} more in the full list (--format json).", more));
  }
  Lines lines = one_by_one("Mind", warnings, layout);
  append(lines, one_by_one("Note", notes, layout));
  return lines;
}

}  // namespace bulbwright::report
