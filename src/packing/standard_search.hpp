#pragma once

#include <cstddef>
#include <vector>

#include "packing/standard.hpp"

namespace bulbwright::packing {

/// Places in a standard outline, as far apart as was found.
struct StandardPlaces {
  std::vector<Point> points;
  double spacing = 0.0;  ///< about what they are apart, mm
};

/// Looks for n places, one or more, in a standard outline, as far apart as a search of so much work
/// finds. It knows of nothing but these three: all outlines near one standard, and all spacings in
/// them, are answered from the same layouts.
StandardPlaces standard_places(const Standard& standard, std::size_t n, double least, long work);

}  // namespace bulbwright::packing
