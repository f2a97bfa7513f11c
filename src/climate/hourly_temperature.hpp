#pragma once

#include <array>
#include <span>
#include <vector>

#include "climate/climate.hpp"

namespace bulbwright {

/// Air temperature at the hours 0 to 23 of a day, degC.
using DayHours = std::array<double, 24>;

/// Temperature t hours after sunrise on a day of n hours of light:
/// tmin + (tmax - tmin) sin(pi t / (n + 4)); the maximum comes two hours after noon.
/// Source: Linvill, "Calculating chilling hours and chill units from daily maximum and minimum
/// temperature observations", HortScience 25(1), 1990, 14-16.
double linvill_daytime(double tmin_c, double tmax_c, double n, double t);

/// Temperature t hours after sunset in a night of `night` hours, from the sunset temperature to the
/// next morning's minimum: Ts - (Ts - Tmin') ln(t + 1) / ln(night + 1).
/// Linvill's curve with t moved by one hour, so that it starts at the sunset temperature and ends
/// at the minimum.
double linvill_night(double sunset_c, double next_tmin_c, double night, double t);

/// Air temperature at solar hours 0 to 23 of a day from its extremes and those of its neighbours.
/// Polar day and night give the day's mean. `day_of_year` is that of `today`.
DayHours hourly_temperatures(double latitude, int day_of_year, const DayExtremes& yesterday,
                             const DayExtremes& today, const DayExtremes& tomorrow);

/// A whole winter, 24 values a day: the recorded hours where it has them; else from its days. The
/// first morning and the last evening continue their own day.
std::vector<double> hourly_temperatures(const Winter& winter);

}  // namespace bulbwright
