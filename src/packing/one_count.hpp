#pragma once

#include <cstddef>
#include <vector>

#include "packing/outline.hpp"
#include "packing/packing.hpp"

namespace bulbwright::packing {

/// n points with mutual distance `spacing` and depth `margin` in the section, unrounded, certified
/// to a relative 1e-9 of the spacing; empty when none were found within the effort. The search for
/// one count of equal bulbs alone, for tests and benchmarks of it.
std::vector<Point> fit_points(const Section& section, std::size_t n, Millimetres spacing,
                              Millimetres margin, Effort effort);

}  // namespace bulbwright::packing
