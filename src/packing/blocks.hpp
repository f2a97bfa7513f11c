#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "packing/outline.hpp"
#include "packing/packing.hpp"

namespace bulbwright::packing {

/// Plain blocks of staggered rows, one a kind, side by side across the longer side: what a hand
/// would lay, and what a drift is never fewer than.
class Blocks {
 public:
  Blocks(const Outline& outline, std::span<const PackKind> kinds, double gap, double wall);

  /// Places of counts[k] bulbs of kind k, kind by kind, each kind's block as short as a few
  /// lattices allow; nothing where one finds no room.
  [[nodiscard]] std::optional<std::vector<Point>> places(
      const std::vector<std::size_t>& counts) const;

 private:
  std::vector<double> diameter_;
  double gap_;
  std::vector<std::vector<std::vector<Point>>> lattices_;  ///< of each kind, points by x
};

}  // namespace bulbwright::packing
