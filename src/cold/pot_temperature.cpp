#include "cold/pot_temperature.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numbers>

#include "climate/hourly_temperature.hpp"
#include "cold/cold.hpp"
#include "pot/pot_material.hpp"

namespace bulbwright {
namespace {

constexpr double seconds_per_hour = 3600.0;
constexpr double two_pi = 2.0 * std::numbers::pi;

constexpr double mix_water_share = 0.5;
constexpr double latent_mj_m3 = 334.0;  // of water, from memory

}  // namespace

PotThermal pot_thermal(const Pot& pot) {
  PotThermal thermal;
  thermal.volume = volume_between(pot, 0_mm, mix_surface(pot));
  thermal.cooling_area_m2 = exposed_area_mm2(pot) / 1e6;
  thermal.wall_resistance_m2k_w =
      pot.thickness.value() / 1000.0 / material_named(pot.material).conductivity_w_per_mk;
  return thermal;
}

Pot example_pot() {
  PotRequest request;
  request.top = LengthPair{380_mm, 380_mm, false};
  request.base = LengthPair{290_mm, 290_mm, false};
  request.height = 360_mm;
  request.material = "terracotta";
  return make_pot(request);
}

double time_constant_hours(const PotThermal& pot) {
  assert(pot.cooling_area_m2 > 0.0);
  const double depth_m = pot.volume.value() / 1000.0 / pot.cooling_area_m2;
  const double resistance =
      1.0 / pot.surface_w_m2k + pot.wall_resistance_m2k_w + depth_m / pot.conductivity_w_mk;
  return pot.heat_capacity_mj_m3k * 1e6 * depth_m * resistance / seconds_per_hour;
}

double lag_amplitude(double tau_hours, double period_hours) {
  const double w = two_pi * tau_hours / period_hours;
  return 1.0 / std::sqrt(1.0 + w * w);
}

ExposureEffect effect_of(Exposure exposure) {
  switch (exposure) {
    case Exposure::sheltered:
      return {0.5, 0.0, 0.0};
    case Exposure::warm_wall:
      return {1.0, 2.0, 0.0};
    case Exposure::plunged:
      return {0.0, 0.0, 16.9};
    case Exposure::open:
      break;
  }
  return {};
}

const PotDay& PotWinter::at(Day day) const {
  assert(!days.empty());
  const int i = std::clamp(day - first, 0, static_cast<int>(days.size()) - 1);
  return days[static_cast<std::size_t>(i)];
}

DayHours exposed(const DayHours& air_c, const ExposureEffect& effect) {
  const auto [low, high] = std::minmax_element(air_c.begin(), air_c.end());
  const double swing = *high - *low;
  const double stretch = effect.tmax_offset_k - effect.tmin_offset_k;
  DayHours hours = air_c;
  for (double& t : hours) {
    const double share = swing > 0.0 ? (t - *low) / swing : 0.5;
    t += effect.tmin_offset_k + stretch * share;
  }
  return hours;
}

PotTemperature::PotTemperature(const PotThermal& pot, Exposure exposure)
    : effect_{effect_of(exposure)},
      tau_hours_{std::max(time_constant_hours(pot), effect_.least_tau_hours)},
      heat_{tau_hours_, latent_mj_m3 * mix_water_share / pot.heat_capacity_mj_m3k} {}

PotDay PotTemperature::run(const DayHours& air, double anomaly_sd_k) {
  PotDay day;
  day.anomaly_sd_k = anomaly_sd_k;
  double undone = 0.0;  // logarithm of what is kept
  for (std::size_t h = 0; h < air.size(); ++h) {
    const double mean = heat_.hour(air_c_, air[h]);
    air_c_ = air[h];
    day.min_c = h == 0 ? mean : std::min(day.min_c, mean);
    day.max_c = h == 0 ? mean : std::max(day.max_c, mean);
    day.mean_c += mean / 24.0;
    day.air_mean_c += air[h] / 24.0;
    day.cold_hours += mean_over_anomalies(mean, anomaly_sd_k, cold_response);
    // Far above freezing the two are one.
    const bool no_frost = mean - 4.0 * anomaly_sd_k >= 1.0;
    day.winter_hours += no_frost ? 0.0 : mean_over_anomalies(mean, anomaly_sd_k, [](double t) {
      return winter_response(t) - cold_response(t);
    });
    undone += mean_over_anomalies(mean, anomaly_sd_k, cold_undone_per_hour);
  }
  day.winter_hours += day.cold_hours;
  day.cold_kept = std::exp2(-undone);
  day.frozen_share = heat_.ice();
  return day;
}

PotDay PotTemperature::add(const DayHours& air_c, double anomaly_sd_k) {
  const DayHours air = exposed(air_c, effect_);
  if (!started_) {
    started_ = true;
    air_c_ = air.back();
    heat_.start_at(air_c_);
    run(air, 0.0);
  }
  return run(air, anomaly_sd_k);
}

PotWinter pot_winter(const Winter& winter, const PotThermal& pot, Exposure exposure) {
  PotTemperature mix{pot, exposure};
  PotWinter result{winter.name, winter.latitude, winter.first, {}, mix.tau_hours()};
  const std::vector<double> air = hourly_temperatures(winter);
  result.days.reserve(winter.days.size());
  for (std::size_t d = 0; d < winter.days.size(); ++d) {
    DayHours hours{};
    std::copy_n(air.begin() + static_cast<std::ptrdiff_t>(24 * d), 24, hours.begin());
    result.days.push_back(mix.add(hours, winter.days[d].anomaly_sd_k));
  }
  return result;
}

Celsius lowest(const PotWinter& winter, Day first, Day last) {
  double low = winter.at(first).min_c;
  for (Day day = first; day <= last; ++day) low = std::min(low, winter.at(day).min_c);
  return Celsius{low};
}

}  // namespace bulbwright
