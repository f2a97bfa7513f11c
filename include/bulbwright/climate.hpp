#pragma once

#include <array>
#include <string>
#include <vector>

#include "bulbwright/calendar_day.hpp"
#include "bulbwright/place.hpp"

namespace bulbwright {

/// Air temperature of one day, degC.
struct DayExtremes {
  double tmin_c = 0.0;
  double tmax_c = 0.0;
  bool measured = false;  ///< from a record; else expected from normals

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

/// How far the mild and the cold winter lie from the normal one in each month: the year-to-year
/// deviation and, for a zone, the spread between its stations, sqrt(sd^2 + spread^2), in kelvin.
std::array<double, 12> winter_deviation_k(const Place& place);

/// The normal, the mild (one deviation warmer all the season) and the cold winter, in this order,
/// over winter_days(season).
std::array<Winter, 3> winters_from_normals(const Place& place, int season);

}  // namespace bulbwright
