#pragma once

#include <cstddef>
#include <vector>

#include "packing/outline.hpp"

namespace bulbwright::packing {

/// The best layouts of n equal discs in a circle that a long search has found, n = 1 to
/// round_table_size(): data/round_layouts.csv, made and checked by
/// tests/bench/packing_round_layouts.cpp. `ratio` is the container's radius over the discs'; it
/// never falls as n grows.
std::size_t round_table_size();

/// The largest n of the table whose ratio is no greater; 0 below 1.
std::size_t round_table_count(double ratio);

/// The ratio of the table for n, 1 to round_table_size().
double round_table_ratio(std::size_t n);

/// Centres of n discs in a circle of radius 1 for the centres, good to 1/16383: in the basin of the
/// layout, to be polished.
std::vector<Point> round_table_layout(std::size_t n);

}  // namespace bulbwright::packing
