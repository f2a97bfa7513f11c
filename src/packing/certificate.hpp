#pragma once

#include <cstdint>
#include <vector>

#include "packing/energy.hpp"
#include "packing/outline.hpp"

namespace bulbwright::packing {

/// Printed positions are whole multiples of 0.01 mm, the unit of the integers here, wherever such
/// hold.
inline constexpr double units_per_mm = 100.0;

/// A centre in whole units, as it is printed.
struct GridPoint {
  std::int64_t x = 0;
  std::int64_t y = 0;
};

inline Point to_mm(GridPoint p) {
  return {static_cast<double>(p.x) / units_per_mm, static_cast<double>(p.y) / units_per_mm};
}

/// Allowed to every printed distance, in units: length_dust.
inline constexpr double allowed_units = length_dust * units_per_mm;

/// Least squared distance of printed centres, in square units.
std::int64_t least_square(double distance_mm);

/// Judges printed positions. Pairs and round walls are compared as whole numbers
/// (squared distances in units), other outlines by their depth. 1e-9 mm is allowed everywhere,
/// to absorb the binary dust of the lengths asked for.
class Certifier {
 public:
  Certifier(const Outline& outline, const Discs& discs);

  [[nodiscard]] bool apart(std::size_t i, GridPoint p, std::size_t j, GridPoint q) const {
    return square_distance(p, q) >= needed(i, j);
  }
  [[nodiscard]] bool inside(std::size_t i, GridPoint p) const;
  /// Least squared distance of centres i and j, in square units.
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

/// Where no whole hundredths hold, because nothing in a layout can move, places are given in
/// millionths of a millimetre, and distances hold but for two of them.
inline constexpr double fine_unit_mm = 1e-6;
inline constexpr double allowed_finely = 2.0 * fine_unit_mm;
/// x in whole millionths.
Coordinates finely_rounded(Coordinates x);
/// Every pair and every wall, in mm. Time O(n^2).
bool holds_finely(const Outline& outline, const Discs& discs, const Coordinates& x);

/// The centres of a printed layout, mm.
Coordinates printed_coordinates(const std::vector<GridPoint>& layout);

/// Greatest relative violation of a layout that is not rounded: the largest shortfall of a pair
/// distance or depth, divided by the wanted pair distance (or twice the reach, for a wall).
double violation(const Outline& outline, const Discs& discs, const Coordinates& x);

}  // namespace bulbwright::packing
