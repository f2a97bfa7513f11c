#pragma once

#include <span>
#include <vector>

#include "packing/outline.hpp"
#include "packing/packing.hpp"

namespace bulbwright::packing {

// What growers count by otherwise (common practice), for comparison beside the packer's answer.
// All count points `spacing` apart and `margin` deep.

/// Area of the section over the square of the spacing, rounded down. A rule of thumb, no layout: it
/// may promise more than fit.
std::size_t count_by_area(const Section& section, double spacing);

/// A square grid parallel to the sides, the fullest of `offsets` x `offsets` origins.
std::size_t count_by_square_grid(const Outline& outline, double spacing, double margin,
                                 int offsets);

/// The fullest hexagonal lattice over `turns` directions (0 to 60 degrees) and `offsets` x
/// `offsets` origins, nothing else tried.
std::size_t count_by_hexagonal_lattice(const Outline& outline, double spacing, double margin,
                                       int turns, int offsets);

/// Rings about the middle, `spacing` from ring to ring and along each ring, from the wall inwards
/// (round sections).
std::size_t count_by_rings(const Outline& outline, double spacing, double margin);

/// A person filling the pot: kinds in turn by their shares, each bulb at the first free place of a
/// fine grid, row by row from the front. The count when the kind whose turn it is finds no place.
std::size_t count_by_greedy_fill(const Outline& outline, std::span<const PackKind> kinds,
                                 double gap, double wall);

}  // namespace bulbwright::packing
