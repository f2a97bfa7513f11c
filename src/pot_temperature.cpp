#include "bulbwright/pot_temperature.hpp"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <numbers>

#include "bulbwright/cold.hpp"
#include "bulbwright/hourly_temperature.hpp"

namespace bulbwright {
namespace {

constexpr double seconds_per_hour = 3600.0;
constexpr double two_pi = 2.0 * std::numbers::pi;

struct MaterialResistance {
  std::string_view material;
  double m2k_w;
};
// Usual wall thickness / conductivity, from memory.
constexpr double terracotta_m2k_w = 0.015 / 0.8;
constexpr std::array resistances{MaterialResistance{"terracotta", terracotta_m2k_w},
                                 MaterialResistance{"plastic", 0.003 / 0.2},
                                 MaterialResistance{"glazed", 0.012 / 1.0},
                                 MaterialResistance{"wood", 0.020 / 0.13},
                                 MaterialResistance{"metal", 0.0},
                                 MaterialResistance{"stone", 0.050 / 2.0},
                                 MaterialResistance{"concrete", 0.040 / 1.4},
                                 MaterialResistance{"fibreglass", 0.005 / 0.3},
                                 MaterialResistance{"fabric", 0.003 / 0.1},
                                 MaterialResistance{"foam", 0.030 / 0.033}};

constexpr double mix_water_share = 0.5;
constexpr double latent_mj_m3 = 334.0;  // of water, from memory

/// The mix as one body that follows the air, with ice.
class Mix {
 public:
  Mix(double tau_hours, double latent_k, double start_c)
      : tau_{tau_hours}, latent_k_{latent_k}, t_{start_c} {}

  /// One hour with the air going from a to b; returns the hour's mean.
  double step(double a, double b) {
    const LagStep lag = lag_step(t_, a, b, tau_);
    const double before = t_;
    t_ = lag.end;
    // Heat taken below zero makes ice first; heat above zero melts it first.
    if (t_ < 0.0 && ice_ < 1.0) return change_ice(before);
    if (t_ > 0.0 && ice_ > 0.0) return change_ice(before);
    return lag.mean;
  }
  [[nodiscard]] double ice() const { return ice_; }

 private:
  double change_ice(double before) {
    const double wanted = ice_ - t_ / latent_k_;
    ice_ = std::clamp(wanted, 0.0, 1.0);
    t_ = (ice_ - wanted) * latent_k_;
    return (before + t_) / 2;
  }

  double tau_;
  double latent_k_;
  double t_;
  double ice_ = 0.0;
};

PotDay summary(std::span<const double> mix, std::span<const double> air) {
  PotDay day;
  day.min_c = day.max_c = mix[0];
  double mean = 0.0, air_mean = 0.0;
  for (std::size_t i = 0; i < mix.size(); ++i) {
    mean += mix[i];
    air_mean += air[i];
    day.min_c = std::min(day.min_c, mix[i]);
    day.max_c = std::max(day.max_c, mix[i]);
    day.cold_hours += cold_response(mix[i]);
    day.cold_kept *= cold_kept_per_hour(mix[i]);
  }
  const auto n = static_cast<double>(mix.size());
  day.mean_c = mean / n;
  day.air_mean_c = air_mean / n;
  return day;
}

Winter exposed(Winter winter, const ExposureEffect& effect) {
  for (DayExtremes& day : winter.days) {
    day.tmin_c += effect.tmin_offset_k;
    day.tmax_c = std::max(day.tmax_c + effect.tmax_offset_k, day.tmin_c);
  }
  return winter;
}

}  // namespace

double wall_resistance(std::string_view material) {
  for (const auto& known : resistances) {
    if (known.material == material) return known.m2k_w;
  }
  return terracotta_m2k_w;
}

PotThermal example_pot_thermal() {
  const double height = 0.335, base = 0.145, top = 0.145 + (0.190 - 0.145) * 335.0 / 360.0;
  const double volume = std::numbers::pi * height / 3 * (base * base + base * top + top * top);
  const double side = std::numbers::pi * (base + top) * std::hypot(height, top - base);
  PotThermal pot;
  pot.volume = Litres{volume * 1000.0};
  pot.cooling_area_m2 = side + std::numbers::pi * top * top;
  pot.wall_resistance_m2k_w = wall_resistance("terracotta");
  return pot;
}

double time_constant_hours(const PotThermal& pot) {
  assert(pot.cooling_area_m2 > 0.0);
  const double depth_m = pot.volume.value() / 1000.0 / pot.cooling_area_m2;
  const double resistance =
      1.0 / pot.surface_w_m2k + pot.wall_resistance_m2k_w + depth_m / pot.conductivity_w_mk;
  return pot.heat_capacity_mj_m3k * 1e6 * depth_m * resistance / seconds_per_hour;
}

LagStep lag_step(double start, double a, double b, double tau_hours, double hours) {
  if (tau_hours <= 0.0) return {b, (a + b) / 2};
  const double r = (b - a) / hours;
  const double end = b - r * tau_hours + (start - a + r * tau_hours) * std::exp(-hours / tau_hours);
  return {end, (a + b) / 2 - tau_hours * (end - start) / hours};
}

double lag_amplitude(double tau_hours, double period_hours) {
  const double w = two_pi * tau_hours / period_hours;
  return 1.0 / std::sqrt(1.0 + w * w);
}

double lag_delay_hours(double tau_hours, double period_hours) {
  return period_hours / two_pi * std::atan(two_pi * tau_hours / period_hours);
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

const char* to_string(Exposure exposure) {
  switch (exposure) {
    case Exposure::sheltered:
      return "sheltered";
    case Exposure::warm_wall:
      return "warm-wall";
    case Exposure::plunged:
      return "plunged";
    case Exposure::open:
      break;
  }
  return "open";
}

const PotDay& PotWinter::at(Day day) const {
  assert(!days.empty());
  const int i = std::clamp(day - first, 0, static_cast<int>(days.size()) - 1);
  return days[static_cast<std::size_t>(i)];
}

PotWinter pot_winter(const Winter& winter, const PotThermal& pot, Exposure exposure) {
  const ExposureEffect effect = effect_of(exposure);
  PotWinter result{winter.name, winter.latitude, winter.first, {}, 0.0};
  result.tau_hours = std::max(time_constant_hours(pot), effect.least_tau_hours);
  if (winter.days.empty()) return result;
  const std::vector<double> air = hourly_temperatures(exposed(winter, effect));
  const double latent_k = latent_mj_m3 * mix_water_share / pot.heat_capacity_mj_m3k;
  Mix mix{result.tau_hours, latent_k, air[0]};
  for (std::size_t h = 0; h < 24; ++h) mix.step(air[h], air[(h + 1) % 24]);  // fall in step
  result.days.reserve(winter.days.size());
  std::array<double, 24> means{};
  for (std::size_t d = 0; d < winter.days.size(); ++d) {
    for (std::size_t h = 0; h < 24; ++h) {
      const std::size_t i = 24 * d + h;
      means[h] = mix.step(air[i], air[std::min(i + 1, air.size() - 1)]);
    }
    PotDay day = summary(means, std::span{air}.subspan(24 * d, 24));
    day.frozen_share = mix.ice();
    day.measured = winter.days[d].measured;
    result.days.push_back(day);
  }
  return result;
}

Celsius lowest(const PotWinter& winter, Day first, Day last) {
  double low = winter.at(first).min_c;
  for (Day day = first; day <= last; ++day) low = std::min(low, winter.at(day).min_c);
  return Celsius{low};
}

}  // namespace bulbwright
