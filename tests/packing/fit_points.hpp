#pragma once

#include <cstddef>
#include <vector>

#include "packing/outline.hpp"
#include "packing/packing.hpp"

namespace bulbwright::fixture {

/// The inner search put to one count of equal bulbs: n points with mutual distance `spacing` and
/// depth `margin` in the section, unrounded, certified to a relative 1e-9 of the spacing; empty
/// when none were found within the effort. What people get is pack_most().
std::vector<packing::Point> fit_points(const Section& section, std::size_t n, Millimetres spacing,
                                       Millimetres margin, Effort effort);

}  // namespace bulbwright::fixture
