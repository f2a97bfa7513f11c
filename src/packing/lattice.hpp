#pragma once

#include <vector>

#include "packing/outline.hpp"

namespace bulbwright::packing {

/// Points origin + i u + j v for all whole i, j.
struct Lattice {
  Point origin, u, v;
};

/// The hexagonal lattice of this spacing, one row direction along (dx, dy), a unit vector.
Lattice hexagonal(double spacing, double dx, double dy, Point origin);

/// The points of the lattice at least `margin` deep (1e-9 mm of tolerance), in row order.
std::vector<Point> points_within(const Lattice& lattice, const Outline& outline, double margin);

/// The fullest hexagonal lattice over 12 directions and 8 x 8 origins in its cell, and, for a
/// rectangle, the fullest lattice of staggered rows stretched to its sides. The same directions and
/// origins for every size, so that a larger outline never holds fewer of their points.
std::vector<Point> best_lattice(const Outline& outline, double spacing, double margin);

}  // namespace bulbwright::packing
