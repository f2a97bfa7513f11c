#include "shopping/need.hpp"

#include <algorithm>

#include "base/apportion.hpp"
#include "shopping/spares.hpp"

namespace bulbwright {
namespace {

/// Bought in one line.
bool is_alike(const ShoppingNeed& a, const ShoppingNeed& b) {
  return a.taxon == b.taxon && a.grade == b.grade && a.label == b.label && a.own == b.own;
}

}  // namespace

void add_spares(std::span<ShoppingNeed> needs, double rate) {
  std::vector<bool> done(needs.size(), false);
  for (std::size_t i = 0; i < needs.size(); ++i) {
    if (done[i] || needs[i].own) continue;
    std::vector<std::size_t> alike;
    std::vector<double> counts;
    int sum = 0;
    for (std::size_t j = i; j < needs.size(); ++j) {
      if (!is_alike(needs[i], needs[j])) continue;
      done[j] = true;
      if (needs[j].need == 0) continue;
      alike.push_back(j);
      counts.push_back(needs[j].need);
      sum += needs[j].need;
    }
    if (alike.empty()) continue;
    const std::vector<int> spares = apportion(flat_spares(sum, rate), counts);
    for (std::size_t k = 0; k < alike.size(); ++k) {
      ShoppingNeed& need = needs[alike[k]];
      need.spares = spares[k];
      need.buy = need.need + need.spares;
    }
  }
}

std::vector<ShoppingNeed> needs_by_kind(std::span<const ShoppingNeed> needs) {
  std::vector<ShoppingNeed> result;
  for (const ShoppingNeed& need : needs) {
    const auto same = std::find_if(result.begin(), result.end(), [&](const ShoppingNeed& other) {
      return is_alike(other, need);
    });
    if (same == result.end()) {
      result.push_back(need);
      continue;
    }
    same->need += need.need;
    same->spares += need.spares;
    same->buy += need.buy;
  }
  return result;
}

}  // namespace bulbwright
