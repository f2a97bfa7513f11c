#pragma once

#include <vector>

#include "packing/outline.hpp"

namespace bulbwright::packing {

/// Staggered rows parallel to a side of a rectangle, worked out in whole units of 0.01 mm: a
/// layout that needs no rounding, the fullest over the number of rows and both directions. Points
/// `spacing` apart and `margin` deep; empty for other outlines.
std::vector<Point> printable_rows(const Outline& outline, double spacing, double margin);

}  // namespace bulbwright::packing
