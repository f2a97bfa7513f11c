#pragma once

#include <cstdint>
#include <vector>

#include "packing/energy.hpp"
#include "packing/outline.hpp"

namespace bulbwright::packing {

/// A centre in whole tenths of a millimetre, as it is printed.
struct GridPoint {
  std::int64_t x = 0;
  std::int64_t y = 0;
};

/// Allowed to every printed distance, in tenths: 1e-9 mm, for the binary dust of lengths.
inline constexpr double allowed_tenths = 1e-8;

/// Least squared distance of printed centres, in square tenths.
std::int64_t least_square(double distance_mm);

/// Judges printed positions. Pairs and round walls are compared as whole numbers
/// (squared distances in tenths), other outlines by their depth. 1e-9 mm is allowed everywhere,
/// to absorb the binary dust of the lengths asked for.
class Certifier {
 public:
  Certifier(const Outline& outline, const Discs& discs);

  [[nodiscard]] bool apart(std::size_t i, GridPoint p, std::size_t j, GridPoint q) const {
    return square_distance(p, q) >= needed(i, j);
  }
  [[nodiscard]] bool inside(std::size_t i, GridPoint p) const;
  /// Least squared distance of centres i and j, in square tenths.
  [[nodiscard]] std::int64_t needed(std::size_t i, std::size_t j) const;
  /// Every pair and every wall.
  [[nodiscard]] bool holds(const std::vector<GridPoint>& layout) const;

  static std::int64_t square_distance(GridPoint p, GridPoint q) {
    return (p.x - q.x) * (p.x - q.x) + (p.y - q.y) * (p.y - q.y);
  }

 private:
  const Outline* outline_;
  const Discs* discs_;
  std::vector<std::size_t> size_class_;  ///< equal reach, equal class
  std::vector<std::int64_t> needed_;     ///< by two classes
  std::size_t classes_ = 0;
};

/// The centres of a printed layout, mm.
Coordinates printed_coordinates(const std::vector<GridPoint>& layout);

/// Greatest relative violation of a layout that is not rounded: the largest shortfall of a pair
/// distance or depth, divided by the wanted pair distance (or twice the reach, for a wall).
double violation(const Outline& outline, const Discs& discs, const Coordinates& x);

}  // namespace bulbwright::packing
