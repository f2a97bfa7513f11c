#include "shopping/need.hpp"

#include <algorithm>

#include "shopping/spares.hpp"

namespace bulbwright {

std::vector<ShoppingNeed> needs_by_kind(std::span<const ShoppingNeed> needs) {
  std::vector<ShoppingNeed> result;
  for (const ShoppingNeed& need : needs) {
    const auto same = std::find_if(result.begin(), result.end(), [&](const ShoppingNeed& other) {
      return other.taxon == need.taxon && other.grade == need.grade && other.label == need.label &&
             other.own == need.own;
    });
    if (same == result.end()) {
      result.push_back(need);
      continue;
    }
    same->need += need.need;
    if (same->own) continue;
    same->spares = flat_spares(same->need, flat_loss_rate);
    same->buy = same->need + same->spares;
  }
  return result;
}

}  // namespace bulbwright
