#include "climate/hourly_temperature.hpp"

#include <cmath>
#include <numbers>

#include "climate/day_length.hpp"

namespace bulbwright {
namespace {

/// A day's light in true solar time: noon is 12.
struct Sun {
  double rise = 12.0;
  double set = 12.0;

  Sun(double latitude, int day_of_year) {
    const double n = day_length_hours(latitude, day_of_year);
    rise = 12.0 - n / 2;
    set = 12.0 + n / 2;
  }
  [[nodiscard]] double light() const { return set - rise; }
  [[nodiscard]] bool rises_and_sets() const { return light() > 0.0 && light() < 24.0; }
};

double sunset_temperature(const Sun& sun, const DayExtremes& day) {
  if (!sun.rises_and_sets()) return day.mean_c();
  return linvill_daytime(day.tmin_c, day.tmax_c, sun.light(), sun.light());
}

struct SunnyDay {
  const Sun& sun;
  const DayExtremes& air;
};

DayHours day_curve(SunnyDay yesterday, SunnyDay today, SunnyDay tomorrow) {
  DayHours hours{};
  const auto& [sun, air] = today;
  if (!sun.rises_and_sets()) {
    hours.fill(air.mean_c());
    return hours;
  }
  const double dusk_before = sunset_temperature(yesterday.sun, yesterday.air);
  const double dusk = sunset_temperature(sun, air);
  const double night_before = sun.rise + 24.0 - yesterday.sun.set;
  const double night = tomorrow.sun.rise + 24.0 - sun.set;
  for (int hour = 0; hour < 24; ++hour) {
    double& t = hours[static_cast<std::size_t>(hour)];
    if (hour <= sun.rise) {
      t = linvill_night(dusk_before, air.tmin_c, night_before, hour + 24.0 - yesterday.sun.set);
    } else if (hour <= sun.set) {
      t = linvill_daytime(air.tmin_c, air.tmax_c, sun.light(), hour - sun.rise);
    } else {
      t = linvill_night(dusk, tomorrow.air.tmin_c, night, hour - sun.set);
    }
  }
  return hours;
}

}  // namespace

double linvill_daytime(double tmin_c, double tmax_c, double n, double t) {
  return tmin_c + (tmax_c - tmin_c) * std::sin(std::numbers::pi * t / (n + 4.0));
}

double linvill_night(double sunset_c, double next_tmin_c, double night, double t) {
  if (night < 1e-9) return next_tmin_c;
  return sunset_c - (sunset_c - next_tmin_c) * std::log(t + 1.0) / std::log(night + 1.0);
}

DayHours hourly_temperatures(double latitude, int day_of_year, const DayExtremes& yesterday,
                             const DayExtremes& today, const DayExtremes& tomorrow) {
  const Sun before{latitude, day_of_year - 1}, sun{latitude, day_of_year},
      after{latitude, day_of_year + 1};
  return day_curve({before, yesterday}, {sun, today}, {after, tomorrow});
}

std::vector<double> hourly_temperatures(const Winter& winter) {
  if (!winter.hours.empty()) return winter.hours;
  std::vector<double> hours;
  const std::size_t n = winter.days.size();
  if (n == 0) return hours;
  std::vector<Sun> suns;
  suns.reserve(n + 2);
  for (int i = -1; i <= static_cast<int>(n); ++i) {
    suns.emplace_back(winter.latitude, (winter.first + i).day_of_year());
  }
  hours.reserve(24 * n);
  for (std::size_t i = 0; i < n; ++i) {
    const DayExtremes& today = winter.days[i];
    const DayExtremes& yesterday = i > 0 ? winter.days[i - 1] : today;
    const DayExtremes& tomorrow = i + 1 < n ? winter.days[i + 1] : today;
    const auto day = day_curve({suns[i], yesterday}, {suns[i + 1], today}, {suns[i + 2], tomorrow});
    hours.insert(hours.end(), day.begin(), day.end());
  }
  return hours;
}

}  // namespace bulbwright
