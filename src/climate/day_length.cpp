#include "climate/day_length.hpp"

#include <cmath>
#include <numbers>

namespace bulbwright {
namespace {

constexpr double radians(double degrees) {
  return degrees * std::numbers::pi / 180.0;
}

}  // namespace

double solar_declination(int day_of_year) {
  const double g = 2.0 * std::numbers::pi / 365.0 * (day_of_year - 1);
  return 0.006918 - 0.399912 * std::cos(g) + 0.070257 * std::sin(g) - 0.006758 * std::cos(2 * g) +
         0.000907 * std::sin(2 * g) - 0.002697 * std::cos(3 * g) + 0.00148 * std::sin(3 * g);
}

double hours_above(double latitude, double declination, double depression) {
  const double phi = radians(latitude);
  const double c = std::cos(phi) * std::cos(declination);
  const double s = -std::sin(radians(depression)) - std::sin(phi) * std::sin(declination);
  if (std::abs(c) < 1e-15) return s < 0 ? 24.0 : 0.0;
  const double x = s / c;
  if (x <= -1) return 24.0;
  if (x >= 1) return 0.0;
  return 24.0 / std::numbers::pi * std::acos(x);
}

double day_length_hours(double latitude, int day_of_year) {
  return hours_above(latitude, solar_declination(day_of_year), sunrise_depression);
}

}  // namespace bulbwright
