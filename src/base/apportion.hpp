#pragma once

#include <span>
#include <vector>

namespace bulbwright {

/// `count` whole pieces shared out by `shares` (each above 0): the largest remainders of
/// count * share / all get the pieces that whole numbers leave over, ties by order; then whoever
/// has none gets one from whoever has most over its due, so that everyone has at least one while
/// they last. The sum is `count`.
/// Source: the method of largest remainders, e.g. Balinski and Young, "Fair Representation", 1982.
std::vector<int> apportion(int count, std::span<const double> shares);

}  // namespace bulbwright
