#pragma once

#include <cstddef>

#include "base/quantity.hpp"
#include "pot/section.hpp"

namespace bulbwright {

/// Points of the fullest hexagonal lattice found over 12 turns and 8 x 8 offsets, with mutual
/// distance `spacing` and depth `margin` in the section: a quick count that surely fits, a little
/// under what pack_most() finds.
std::size_t lattice_count(const Section& section, Millimetres spacing, Millimetres margin);

}  // namespace bulbwright
