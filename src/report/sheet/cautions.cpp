#include <algorithm>
#include <utility>

#include <fmt/core.h>

#include "report/notice_text.hpp"
#include "report/sheet/parts.hpp"
#include "report/sheet/words.hpp"

namespace bulbwright::report {
Lines caution_lines(const Plan& plan, const SheetLayout& layout) {
  std::vector<std::pair<CautionSeverity, std::string>> sorted;
  for (const Caution& caution : plan.cautions) {
    if (caution.short_text.empty())
      continue;  // another caution says it, or it is for the full list
    const std::string text = sentence(in_style(caution_line(caution, layout.style), layout.style));
    const bool said = std::any_of(sorted.begin(), sorted.end(),
                                  [&](const auto& other) { return other.second == text; });
    if (!said) sorted.emplace_back(caution.severity, text);
  }
  std::stable_sort(sorted.begin(), sorted.end(),
                   [](const auto& a, const auto& b) { return a.first < b.first; });
  std::vector<std::string> texts;
  int left_out = 0;
  for (const auto& [severity, text] : sorted) {
    if (severity == CautionSeverity::low && layout.closeness >= closest_layout - 1) {
      ++left_out;
    } else {
      texts.push_back(text);
    }
  }
  if (left_out > 0)
    texts.push_back(fmt::format("{} more in the full list (--format json).", left_out));
  if (layout.closeness < 2) return one_by_one("Take care", texts, layout);
  const char* bullet = layout.style.utf8 ? " •\u00A0" : " *\u00A0";
  std::string all = texts.empty() ? "" : "Take care:";
  for (const std::string& text : texts) all += bullet + text;
  Lines lines = wrap(all, layout.width);
  constexpr std::string_view label = "Take care:";
  if (!lines.empty()) lines[0] = bold(label, layout.style) + lines[0].substr(label.size());
  return lines;
}

}  // namespace bulbwright::report
