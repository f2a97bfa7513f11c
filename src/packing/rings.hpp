#pragma once

#include <vector>

#include "packing/outline.hpp"

namespace bulbwright::packing {

/// Places of one ring or row each.
using PlaceSets = std::vector<std::vector<Point>>;

/// The fullest rings found, the outermost first: points `spacing` apart, `margin` deep.
PlaceSets fullest_rings(const Outline& outline, double spacing, double margin);

/// The fullest straight rows found, in order across: along the length, or upright.
PlaceSets fullest_rows(const Outline& outline, double spacing, double margin, bool upright);

std::size_t places_in(const PlaceSets& sets);

}  // namespace bulbwright::packing
