#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "climate/place.hpp"
#include "climate/position.hpp"
#include "climate/station_table.hpp"

namespace bulbwright {

/// How many stations around a place are blended: more no longer help (docs/places.md).
inline constexpr std::size_t blended_stations = 24;

/// A climate between stations.
struct Blend {
  MonthlyNormals normals;
  std::array<double, 12> rain_mm{};
  /// Expected error (standard deviation) of each month's mean temperature, kelvin.
  std::array<double, 12> error_k{};
  std::vector<double> weights;  ///< of the stations in every month's temperatures; they add up to 1
  double elevation_m = 0.0;     ///< the one given, else the nearest stations' own
  bool elevation_assumed = false;
};

/// The climate at `at` from the stations around it (at least one; the nearest first), for a place
/// `elevation_m` above the sea.
///
/// A temperature of one month is taken as
///   t = m + g . x - 4.5 K/km z + b z + e(x, z)
/// over the position x and the height z, with a level m, a slope g of about 0.7 K in 100 km and a
/// change b of the lapse rate of about 1 K/km that the stations around decide (winter inversions,
/// foehn valleys), and a remainder e that two stations share by exp(-h^1.2), h^2 = (d / 300 km)^2 +
/// (dz / 1500 m)^2. What follows best from the stations is the mean of that Gaussian process given
/// their values; its variance, scaled by how rough the stations around are, is the error. Minimum
/// and maximum of all months have the same weights and their own slopes.
/// Figures chosen by leaving stations out one by one (docs/places.md).
/// Source: Rasmussen and Williams, "Gaussian Processes for Machine Learning", 2006, eq. 2.25, 2.26;
/// the basis functions with a prior: section 2.7.
///
/// Rain takes the same weights by log(rain + 10 mm), at most 1.5 times the wettest station's.
Blend blended(std::span<const Station> around, GeoPoint at, std::optional<double> elevation_m);

}  // namespace bulbwright
