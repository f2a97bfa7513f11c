#include "base/apportion.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numeric>

#include "base/quantity.hpp"

namespace bulbwright {

std::vector<int> apportion(int count, std::span<const double> shares) {
  const double all = std::accumulate(shares.begin(), shares.end(), 0.0);
  std::vector<int> counts;
  std::vector<double> due;
  int given = 0;
  for (const double share : shares) {
    due.push_back(count * share / all);
    counts.push_back(static_cast<int>(std::floor(due.back() + 1e-9)));
    given += counts.back();
  }
  /// What a share has beyond its due, rounded so that ties are ties.
  const auto over = [&](std::size_t i) { return rounded(counts[i] - due[i], 1e-6); };
  std::vector<std::size_t> order(shares.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return over(a) < over(b); });
  for (std::size_t k = 0; given < count; ++k, ++given) ++counts[order[k % order.size()]];

  for (int& none : counts) {
    if (none > 0) continue;
    std::size_t giver = 0;
    for (std::size_t i = 1; i < counts.size(); ++i) {
      if (counts[i] > 1 && (counts[giver] <= 1 || over(i) > over(giver))) giver = i;
    }
    if (counts[giver] <= 1) break;
    --counts[giver];
    ++none;
  }
  return counts;
}

}  // namespace bulbwright
