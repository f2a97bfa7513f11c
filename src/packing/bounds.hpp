#pragma once

#include <cstddef>
#include <string>

#include "packing/outline.hpp"

namespace bulbwright::packing {

struct Bound {
  std::size_t most = 0;
  std::string name;  ///< which proof gives it
};

/// A proven most number of points, `spacing` apart and `margin` deep in the outline. The least of
/// - Oler 1961: N <= 2/sqrt(3) A/s^2 + P/(2 s) + 1 for a compact convex region of area A and
///   perimeter P. Source: N. Oler, "An inequality in the geometry of numbers", Acta Mathematica
///   105, 1961 (formula from memory). Area and perimeter are those of a polygon around the region,
///   and the right side grows with the region, so the polygon's value is a bound too;
/// - the width: in a region of height h < s neighbours along the length are at least
///   sqrt(s^2 - h^2) apart;
/// - proven optimal packings of a round section (n <= 14 and 19) and of a square (n <= 33 and 36):
///   below the optimum of n no more than n - 1 fit. Source: E. Specht's tables of best known
///   packings, entries marked proven; for 36 in a square K. Kirchner and G. Wengerodt, "Die
///   dichteste Packung von 36 Kreisen in einem Quadrat", Beitr. Algebra Geom. 25, 1987 (from
///   memory).
/// Everything is worked out for lengths easier by length_dust, so that a layout certified with that
/// much tolerance never stands above the bound.
Bound most_points(const Outline& outline, double spacing, double margin);

}  // namespace bulbwright::packing
