#pragma once

#include <array>
#include <cmath>
#include <numbers>
#include <vector>

#include "climate/day_length.hpp"

/// Other published ways to the same quantities, plain and slow, to check the program against.
namespace bulbwright::climate_oracles {

inline constexpr double radian = std::numbers::pi / 180.0;

/// Day length by the CBM model. Source: Forsythe, Rykiel, Stahl, Wu, Schoolfield, "A model
/// comparison for daylength as a function of latitude and day of year", Ecological Modelling 80,
/// 1995, 87-95.
inline double day_length_cbm(double latitude, int day_of_year, double depression) {
  const double theta =
      0.2163108 + 2 * std::atan(0.9671396 * std::tan(0.00860 * (day_of_year - 186)));
  return hours_above(latitude, std::asin(0.39795 * std::cos(theta)), depression);
}

/// Day length from low-precision solar coordinates of the date at noon UT. Source: Meeus,
/// "Astronomical Algorithms", ch. 25, in the form of the NOAA solar calculator (from memory).
inline double day_length_almanac(double latitude, int year, int month, int day) {
  const int y = month <= 2 ? year - 1 : year, m = month <= 2 ? month + 12 : month, a = y / 100;
  const double jd = std::floor(365.25 * (y + 4716)) + std::floor(30.6001 * (m + 1)) + day +
                    (2 - a + a / 4) - 1524.5 + 0.5;
  const double t = (jd - 2451545.0) / 36525;
  const double mean_longitude = std::fmod(280.46646 + t * (36000.76983 + 0.0003032 * t), 360.0);
  const double g = radian * (357.52911 + t * (35999.05029 - 0.0001537 * t));
  const double centre = (1.914602 - t * (0.004817 + 0.000014 * t)) * std::sin(g) +
                        (0.019993 - 0.000101 * t) * std::sin(2 * g) + 0.000289 * std::sin(3 * g);
  const double omega = radian * (125.04 - 1934.136 * t);
  const double apparent = radian * (mean_longitude + centre - 0.00569 - 0.00478 * std::sin(omega));
  const double obliquity =
      radian * (23 + (26 + (21.448 - t * (46.815 + t * (0.00059 - 0.001813 * t))) / 60) / 60 +
                0.00256 * std::cos(omega));
  return hours_above(latitude, std::asin(std::sin(obliquity) * std::sin(apparent)),
                     sunrise_depression);
}

inline constexpr std::array<int, 12> month_length{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};

inline std::vector<int> month_of_days() {
  std::vector<int> month;
  for (int m = 0; m < 12; ++m)
    month.insert(month.end(), static_cast<std::size_t>(month_length[static_cast<std::size_t>(m)]),
                 m);
  return month;
}

/// Adds to each month the constant that restores its mean.
inline void restore_means(std::vector<double>& days, const std::array<double, 12>& monthly) {
  const std::vector<int> month = month_of_days();
  for (int m = 0; m < 12; ++m) {
    double sum = 0.0;
    for (std::size_t d = 0; d < 365; ++d) sum += month[d] == m ? days[d] : 0.0;
    const auto i = static_cast<std::size_t>(m);
    const double shift = monthly[i] - sum / month_length[i];
    for (std::size_t d = 0; d < 365; ++d) days[d] += month[d] == m ? shift : 0.0;
  }
}

/// Source: Rymes, Myers, "Mean preserving algorithm for smoothly interpolating averaged data",
/// Solar Energy 71, 2001, 225-231: repeated three-day means, each followed by restoring the month's
/// mean.
inline std::vector<double> rymes_myers(const std::array<double, 12>& monthly) {
  const std::vector<int> month = month_of_days();
  std::vector<double> days(365);
  for (std::size_t d = 0; d < 365; ++d) days[d] = monthly[static_cast<std::size_t>(month[d])];
  for (int pass = 0; pass < 365; ++pass) {
    const std::vector<double> old = days;
    for (std::size_t d = 0; d < 365; ++d) {
      days[d] = (old[(d + 364) % 365] + old[d] + old[(d + 1) % 365]) / 3;
    }
    restore_means(days, monthly);
  }
  return days;
}

/// Straight lines between mid-month values corrected, by repeated restoring, until every month's
/// mean is exact.
inline std::vector<double> straight_lines(const std::array<double, 12>& monthly) {
  std::array<double, 12> middle{}, node = monthly;
  double start = 0.0;
  for (std::size_t m = 0; m < 12; ++m) {
    middle[m] = start + month_length[m] / 2.0;
    start += month_length[m];
  }
  std::vector<double> days(365);
  const std::vector<int> month = month_of_days();
  for (int pass = 0; pass < 2000; ++pass) {
    for (std::size_t d = 0; d < 365; ++d) {
      const double t = static_cast<double>(d) + 0.5;
      std::size_t i = 11;
      for (std::size_t m = 0; m < 12; ++m) i = middle[m] <= t ? m : i;
      const std::size_t j = (i + 1) % 12;
      const double from = t < middle[0] ? middle[11] - 365 : middle[i];
      const double to = j == 0 && t >= middle[11] ? middle[0] + 365 : middle[j];
      const double f = (t - from) / (to - from);
      days[d] = node[i] * (1 - f) + node[j] * f;
    }
    std::vector<double> exact = days;
    restore_means(exact, monthly);
    for (std::size_t d = 0; d < 365; ++d) {
      const auto m = static_cast<std::size_t>(month[d]);
      node[m] += (exact[d] - days[d]) / month_length[m];
    }
  }
  return days;
}

}  // namespace bulbwright::climate_oracles
