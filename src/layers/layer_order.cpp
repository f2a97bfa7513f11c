// order_layers() and its check, apart from the depths.
#include <algorithm>
#include <numeric>
#include <tuple>

#include "layers/stack.hpp"

namespace bulbwright {

std::vector<std::size_t> order_layers(std::span<const OrderKey> keys) {
  const bool all_predicted =
      std::all_of(keys.begin(), keys.end(), [](const OrderKey& key) { return key.peak; });
  std::vector<std::size_t> order(keys.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  const auto rank = [&](std::size_t i) {
    const OrderKey& key = keys[i];
    return std::tuple{all_predicted ? key.peak->serial() : 0, key.season_class,
                      rounded(key.bulb_height.value(), 0.1)};
  };
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return rank(a) > rank(b); });
  return order;
}

std::vector<std::size_t> flowering_before_the_layer_above(std::span<const OrderKey> bottom_first) {
  std::vector<std::size_t> early;
  for (std::size_t i = 0; i + 1 < bottom_first.size(); ++i) {
    const auto &lower = bottom_first[i].peak, &upper = bottom_first[i + 1].peak;
    if (lower && upper && *lower < *upper) early.push_back(i);
  }
  return early;
}

}  // namespace bulbwright
