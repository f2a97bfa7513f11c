#include "base/near_miss.hpp"

#include <algorithm>
#include <vector>

#include <fmt/core.h>

#include "base/error.hpp"

namespace bulbwright {

std::size_t edit_distance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> before(b.size() + 1), last(b.size() + 1), row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) last[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t change = a[i - 1] == b[j - 1] ? 0 : 1;
      row[j] = std::min({last[j] + 1, row[j - 1] + 1, last[j - 1] + change});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) {
        row[j] = std::min(row[j], before[j - 2] + 1);
      }
    }
    std::swap(before, last);
    std::swap(last, row);
  }
  return last[b.size()];
}

std::string did_you_mean(std::string_view text, std::span<const std::string_view> known) {
  if (text.empty() || text.size() > 200) return {};
  const std::size_t most = std::max<std::size_t>(1, text.size() / 3);
  std::size_t nearest = most + 1;
  std::vector<std::string_view> best;
  for (const std::string_view candidate : known) {
    const std::size_t distance = edit_distance(text, candidate);
    if (distance < nearest) {
      nearest = distance;
      best.clear();
    }
    if (distance == nearest && nearest <= most && best.size() < 2) best.push_back(candidate);
  }
  if (best.empty()) return {};
  if (best.size() == 1) return fmt::format("; did you mean {}?", in_quotes(best[0]));
  return fmt::format("; did you mean {} or {}?", in_quotes(best[0]), in_quotes(best[1]));
}

}  // namespace bulbwright
