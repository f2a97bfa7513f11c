#pragma once

#include <vector>

#include "packing/energy.hpp"
#include "packing/random.hpp"

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

/// n points drawn with the section's own symmetry: k-fold turns of a round section, half a turn of
/// an oval or rectangle, a mirror image in a half-round. Relaxing keeps the symmetry, which leaves
/// far fewer minima; many of the densest packings known are symmetric.
std::vector<Point> symmetric_seed(const Outline& outline, std::size_t n, double margin,
                                  Random& random);

/// Rings of 6, 12, 18 … points about a centre, evenly spaced, at random phases: the start of the
/// curved hexagonal packings. Outermost points are left out until n remain.
/// Source: Lubachevsky & Graham, "Curved hexagonal packings of equal disks in a circle", Discrete &
/// Computational Geometry 18, 1997 (from memory).
std::vector<Point> hexagonal_ring_seed(const Outline& outline, std::size_t n, double margin,
                                       Random& random);

Coordinates to_coordinates(const std::vector<Point>& points);
std::vector<Point> to_points(const Coordinates& x);

}  // namespace bulbwright::packing
