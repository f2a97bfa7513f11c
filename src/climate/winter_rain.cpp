#include "climate/winter_rain.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace bulbwright {
namespace {

constexpr double wet_mm_a_month = 75.0, wet_times_evaporation = 1.5;
constexpr double snow_below_c = 0.0;
constexpr std::array<int, 12> middle_of_month{15,  46,  74,  105, 135, 166,
                                              196, 227, 258, 288, 319, 349};
constexpr std::array<int, 12> days_of_month{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};

/// Radiation above the air, in mm of water a day. FAO 56, eq. 21 to 25; 2.45 MJ evaporate 1 mm.
double radiation_mm(double latitude, int day_of_year) {
  constexpr double solar_constant = 0.0820;  // MJ/m2 a minute
  const double year = 2 * std::numbers::pi * day_of_year / 365;
  const double distance = 1 + 0.033 * std::cos(year);
  const double declination = 0.409 * std::sin(year - 1.39);
  const double phi = latitude * std::numbers::pi / 180;
  const double sunset = std::acos(std::clamp(-std::tan(phi) * std::tan(declination), -1.0, 1.0));
  const double radiation = 24 * 60 / std::numbers::pi * solar_constant * distance *
                           (sunset * std::sin(phi) * std::sin(declination) +
                            std::cos(phi) * std::cos(declination) * std::sin(sunset));
  return std::max(0.0, radiation) / 2.45;
}

}  // namespace

double reference_evaporation_mm(const MonthlyNormals& normals, double latitude, int month) {
  const auto m = static_cast<std::size_t>(month - 1);
  const double mean = (normals.tmin_c[m] + normals.tmax_c[m]) / 2;
  const double range = std::max(0.0, normals.tmax_c[m] - normals.tmin_c[m]);
  const double a_day =
      0.0023 * (mean + 17.8) * std::sqrt(range) * radiation_mm(latitude, middle_of_month[m]);
  return std::max(0.0, a_day) * days_of_month[m];
}

std::optional<WinterWater> winter_water(const Place& place) {
  if (!place.rain_mm) return std::nullopt;
  WinterWater water;
  double soaking_mm = 0.0;
  const bool south = hemisphere_of(place) == Hemisphere::south;
  const std::array<double, 12> means = monthly_means(place.normals);
  for (const int month : south ? std::array{5, 6, 7, 8} : std::array{11, 12, 1, 2}) {
    const auto m = static_cast<std::size_t>(month - 1);
    const double fallen = (*place.rain_mm)[m] / 4;
    water.fallen_mm_a_month += fallen;
    if (means[m] > snow_below_c) soaking_mm += fallen;
    water.evaporation_mm_a_month +=
        reference_evaporation_mm(place.normals, place.latitude, month) / 4;
  }
  water.fallen_mm_a_month = rounded(water.fallen_mm_a_month, 0.1);
  water.evaporation_mm_a_month = rounded(water.evaporation_mm_a_month, 0.1);
  soaking_mm = rounded(soaking_mm, 0.1);
  const bool wet = soaking_mm >= wet_mm_a_month &&
                   soaking_mm >= wet_times_evaporation * water.evaporation_mm_a_month;
  const bool dry = water.fallen_mm_a_month < water.evaporation_mm_a_month;
  water.rain = wet ? WinterRain::wet : dry ? WinterRain::dry : WinterRain::ordinary;
  return water;
}

}  // namespace bulbwright
