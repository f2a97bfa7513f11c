#pragma once

#include <array>
#include <string>
#include <vector>

#include "base/calendar_day.hpp"
#include "climate/place.hpp"

namespace bulbwright {

/// Air temperature of one day, degC.
struct DayExtremes {
  double tmin_c = 0.0;
  double tmax_c = 0.0;
  bool measured = false;  ///< from a record; else expected from normals
  /// Standard deviation of the day's mean about what is expected of it, kelvin; 0: as it stands.
  double anomaly_sd_k = 0.0;

  [[nodiscard]] double mean_c() const { return (tmin_c + tmax_c) / 2; }
};

/// Daily air temperature over a season with margins: one possible or recorded winter.
struct Winter {
  std::string name;  ///< "normal", "mild", "cold", or the recorded season "2012/13" ("2013" south)
  double latitude = 0.0;  ///< degrees, south negative
  Day first;
  std::vector<DayExtremes> days;  ///< one a day, no hole
  std::vector<double> hours;      ///< 24 a day where recorded by the hour, else empty

  [[nodiscard]] Day last() const { return first + (static_cast<int>(days.size()) - 1); }
};

/// The days that winters of a season cover: the season (north July to June, south January to
/// December) with 31 days before it and 62 after.
DayWindow winter_days(int season, Hemisphere hemisphere);

/// Daily values of a year from monthly means, keeping each month's mean exactly.
///
/// In a month of length L with mean M and the values u, v at its ends the curve is the parabola
///   u (1 - 4x + 3x^2) + v (3x^2 - 2x) + 6 M (x - x^2),  x = 0..1,
/// whose integral is M. Equal slopes at each month's end give the periodic system
///   2 w[i-1]/L[i-1] + 4 w[i] (1/L[i-1] + 1/L[i]) + 2 w[i+1]/L[i] = 6 M[i-1]/L[i-1] + 6 M[i]/L[i]
/// for the 12 end values w. A day's value is the parabola's mean over that day.
/// @returns 365 values, 366 in a leap year.
std::vector<double> daily_from_monthly(const std::array<double, 12>& monthly, bool leap_year);

/// Standard deviation of the winter mean from year to year: 1.2 K at a maritime place, 2.0 K at a
/// continental one. from memory; coarse, for a single figure stands for whole regions.
double year_to_year_sd_k(const MonthlyNormals& normals);

/// Standard deviation of a day's mean temperature about its normal, in kelvin, where the normal is
/// `mean_c`: 2.3 in the warmest month, 1.2 + 0.15 x the yearly range of the monthly means in the
/// coldest, between them by the square of the way. This program's own rule; the daily records of
/// Seattle and New York 2012-2015 (NOAA) give 3.2 and 5.2 in January, 2.2 and 3.2 in April, 2.7 and
/// 2.4 in July, the rule 3.5 and 5.0, 2.6 and 3.0, 2.3 and 2.3.
double day_to_day_sd_k(const MonthlyNormals& normals, double mean_c);

/// Mean of `response(t)` over a normal distribution of t. Gauss-Hermite quadrature of five points
/// (Abramowitz and Stegun, table 25.10), exact for polynomials to the ninth degree.
template <class Response>
double mean_over_anomalies(double t, double sd, Response response) {
  if (sd <= 0.0) return response(t);
  constexpr double near = 1.3556261799742659, far = 2.8569700138728056;
  constexpr double middle_share = 8.0 / 15.0, near_share = 0.2220759220056126,
                   far_share = 0.0112574113277207;
  return middle_share * response(t) +
         near_share * (response(t - near * sd) + response(t + near * sd)) +
         far_share * (response(t - far * sd) + response(t + far * sd));
}

/// How far the mild and the cold winter lie from the normal one in each month: the year-to-year
/// deviation and, for a zone, the spread between its stations, sqrt(sd^2 + spread^2), in kelvin.
std::array<double, 12> winter_deviation_k(const Place& place);

/// The normal, the mild (one deviation warmer all the season) and the cold winter, in this order,
/// over winter_days(season).
std::array<Winter, 3> winters_from_normals(const Place& place, int season);

}  // namespace bulbwright
