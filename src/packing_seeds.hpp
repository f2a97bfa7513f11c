#pragma once

#include <vector>

#include "packing_energy.hpp"
#include "packing_random.hpp"

namespace bulbwright::packing {

/// A point drawn from the region `margin` deep (or, where that is too thin to hit, from its box).
Point random_point(const Outline& outline, double margin, Random& random);

/// n starting points, `spacing` wanted, drawn at random.
std::vector<Point> scattered_seed(const Outline& outline, std::size_t n, double margin,
                                  Random& random);

/// n points of a hexagonal lattice of random direction and origin, just fine enough to hold n.
std::vector<Point> lattice_seed(const Outline& outline, std::size_t n, double spacing,
                                double margin, Random& random);

/// n points on concentric copies of the region's boundary, outermost first: rings for a round
/// section. The number on each ring is drawn near what it can hold.
std::vector<Point> ring_seed(const Outline& outline, std::size_t n, double spacing, double margin,
                             Random& random);

Coordinates to_coordinates(const std::vector<Point>& points);
std::vector<Point> to_points(const Coordinates& x);

}  // namespace bulbwright::packing
