#pragma once

#include <string>
#include <vector>

#include "base/calendar_day.hpp"
#include "base/quantity.hpp"
#include "climate/climate.hpp"
#include "climate/hourly_temperature.hpp"
#include "cold/mix_heat.hpp"
#include "pot/pot.hpp"

namespace bulbwright {

/// What a pot's temperature depends on.
struct PotThermal {
  Litres volume;                      ///< of the mix
  double cooling_area_m2 = 0.0;       ///< side and top, without the floor
  double wall_resistance_m2k_w = 0;   ///< thickness / conductivity of the wall
  double heat_capacity_mj_m3k = 2.2;  ///< moist mix: 4.18 x water share + 0.15. 1.5 to 3
  double conductivity_w_mk = 0.5;     ///< moist mix. 0.05 dry to 0.5 wet
  double surface_w_m2k = 11.0;        ///< still air 8, wind 25. from memory
};

/// Of a resolved pot filled to its mix surface.
PotThermal pot_thermal(const Pot& pot);

/// The pot used where none is given: round, terracotta, inner diameter 380 mm at the rim and 290 mm
/// at the base, 360 mm high.
Pot example_pot();

/// Time constant of the mix in hours: rho c (V/A) (1/h + R_wall + (V/A)/k).
/// The first two terms are the lumped pot, the last the way through the mix. Holds at half the
/// radius, where most of a ring of bulbs is, within 6 % of the daily swing of a finite-difference
/// model for 3 to 32 l.
double time_constant_hours(const PotThermal& pot);

/// Share of a swing of that period that a first-order lag leaves, 1/sqrt(1 + (2 pi tau/period)^2).
double lag_amplitude(double tau_hours, double period_hours);

/// What an exposure does to the air at the pot, in kelvin, and to the pot.
/// open: nothing. sheltered: +0.5 on the minimum. warm_wall: +1.0 on the minimum and +2.0 on the
/// maximum (+1.5 in the mean). plunged: the mix follows the soil around it; at 15 cm the daily
/// swing is e^(-0.15/0.10) = 0.22 of the air's (damping depth 0.10 m in moist soil), which is a lag
/// of 16.9 h. The offsets are this program's own guesses: sun, snow and walls beat any model.
struct ExposureEffect {
  double tmin_offset_k = 0.0;
  double tmax_offset_k = 0.0;
  double least_tau_hours = 0.0;
};
ExposureEffect effect_of(Exposure exposure);

/// One day in the mix at bulb depth.
struct PotDay {
  double mean_c = 0.0;
  double min_c = 0.0;
  double max_c = 0.0;
  double air_mean_c = 0.0;    ///< mean of the day's hourly air at the pot, exposure included
  double cold_hours = 0.0;    ///< hours of full cold by cold_response(), 0 to 24
  double winter_hours = 0.0;  ///< by winter_response(): frost counts too, 0 to 24
  double cold_kept = 1.0;     ///< share of the loose cold that the day's warmth leaves, 0 to 1
  double anomaly_sd_k = 0.0;  ///< of DayExtremes: what is expected of the day varies by so much
  double frozen_share = 0.0;  ///< ice in the mix at the day's end, 0 none to 1 frozen through
};

/// A winter as the bulbs in a pot feel it.
struct PotWinter {
  std::string name;       ///< of the Winter
  double latitude = 0.0;  ///< degrees, south negative
  Day first;
  std::vector<PotDay> days;
  double tau_hours = 0.0;

  [[nodiscard]] Day last() const { return first + (static_cast<int>(days.size()) - 1); }
  /// The day's values; a day outside is held at the nearest end.
  [[nodiscard]] const PotDay& at(Day day) const;
};

/// The air at the pot: each hour moves with the day's minimum and maximum.
DayHours exposed(const DayHours& air_c, const ExposureEffect& effect);

/// A pot that follows the air hour by hour, day after day, in constant memory. The first day is run
/// twice, so that the mix starts in step with it.
/// Water in the mix freezes at 0 degC: the mix stays there until the air has taken away 334 MJ/m3
/// (latent heat of water) x half its volume, as much as 76 K of cooling, and thaws alike.
class PotTemperature {
 public:
  PotTemperature(const PotThermal& pot, Exposure exposure);

  [[nodiscard]] double tau_hours() const { return tau_hours_; }
  /// The next day from its air, the exposure's offsets not yet in it. Cold hours and their keeping
  /// are the mean over days that differ from this one by a normal distribution of `anomaly_sd_k`:
  /// the mix follows spells of some days almost in full.
  PotDay add(const DayHours& air_c, double anomaly_sd_k = 0.0);

 private:
  PotDay run(const DayHours& air, double anomaly_sd_k);

  ExposureEffect effect_;
  double tau_hours_;
  MixHeat heat_;
  bool started_ = false;
  double air_c_ = 0.0;
};

/// Runs the pot through a winter.
PotWinter pot_winter(const Winter& winter, const PotThermal& pot, Exposure exposure);

/// Lowest temperature of the mix from `first` to `last`, both included.
Celsius lowest(const PotWinter& winter, Day first, Day last);

/// Roots of potted bulbs are hurt from about -4 degC. from memory; roots of most nursery crops are
/// hurt near -4 degC and killed by sustained -12 degC (Nursery Management, 2011).
inline constexpr Celsius hurtful_frost{-4.0};
inline constexpr double roots_killed_below_c = -12.0;

}  // namespace bulbwright
