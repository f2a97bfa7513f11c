#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "base/calendar_day.hpp"
#include "base/quantity.hpp"
#include "cold/cold.hpp"
#include "cold/pot_temperature.hpp"
#include "flowering/bloom_parameters.hpp"

namespace bulbwright {

/// One day in a pot as growth feels it.
struct BloomDay {
  double mean_c = 0.0;  ///< of a shoot: midway between the mix and the air at the pot
  double heat = 0.0;    ///< its degree-days above -1 degC
  double day_length_h = 12.0;
  double cold_hours = 0.0;  ///< as PotDay
  double cold_kept = 1.0;   ///< as PotDay
  bool measured = false;
};

/// A winter made ready for predict_wave(), once for all kinds in a pot.
struct BloomSeason {
  std::string name;
  Day first;
  std::vector<BloomDay> days;

  [[nodiscard]] Day last() const { return first + (static_cast<int>(days.size()) - 1); }
};

/// Degree-days above `base` of a day whose temperature is a sine between its extremes.
/// Source: Baskerville and Emin, "Rapid estimation of heat accumulation from maximum and minimum
/// temperatures", Ecology 50, 1969, 514-517 (from memory); no upper limit.
double degree_days(double min_c, double max_c, double base_c);

BloomSeason bloom_season(const PotWinter& winter);

/// Days indoors at one temperature with 12.5 h of light, for pots brought in to flower.
BloomSeason indoor_season(Day first, int days, Celsius temperature);

/// What happened to the bulbs before the first day in the pot outdoors (or, for pots that are
/// chilled planted and then brought in, before that day).
struct BloomPlanting {
  Day planted;
  ColdState cold;  ///< of storage and what the bulbs came with (cold.hpp)
  Weeks stored;    ///< of `cold`, full cold weeks given in storage
  Weeks least;     ///< below this much cold up to the shoots, confidence is low
  /// Days from planting on which roots are made and the shoot does not grow; 0 for bulbs that stand
  /// rooted already.
  int rooting_days = 0;
};

/// Of a bulb planted dry: roots come first. from memory: they show a week to ten days after
/// planting at 9 to 13 degC; errors at places left out do not tell 0 from 14 days apart
/// (docs/bloom.md).
inline constexpr int dry_rooting_days = 10;

enum class BloomConfidence { ordinary, low };

/// The flowering of one layer of one kind.
struct Wave {
  bool flowers = false;  ///< false: the heat sum is not reached; the days are then the season's end
  Day shoots;            ///< noses break the surface
  Day first, peak, last;
  double first_exact = 0.0;  ///< serial day with its fraction, for averages and fits
  double peak_exact = 0.0;
  Weeks cold;  ///< storage and natural, up to the shoots
  BloomConfidence confidence = BloomConfidence::ordinary;
};

/// Predicts a wave. Each day from planting, once roots are made, adds
///   heat x r(c) x l(N),
///   r = 1 / (1 + (1/r0 - 1) e^(-(c/s)/k)),
///   l = l_d + (1 - l_d) / (1 + e^(-(N - Nc)/wN)), relieved by storage,
/// c the cold weeks so far (a stored week counting as rho weeks), N the day length; the first
/// flowers open when the sum reaches F. r is the chill-forcing trade-off F(c) = F (1 + (1/r0 - 1)
/// e^...) written as a rate; so more cold or more heat never makes a wave later, and no date jumps.
/// The wave passes at 1/L(T) a day, L = L10 e^(-b (T - 10)), T held in 2 to 22 degC.
/// Sources of the form and the figures: docs/bloom.md. Time O(days); about 10 us.
Wave predict_wave(const BloomParameters& kind, const BloomSeason& season,
                  const BloomPlanting& planting);

/// A wave with what is not known about it.
struct WaveForecast {
  Wave wave;  ///< of the normal winter, or the median of the recorded ones
  Day earliest_first;
  Day latest_last;
  /// Claimed share of years whose first flowers open from earliest_first to as many days after the
  /// predicted first; checked at places left out of the fit (docs/bloom.md).
  double share = 0.8;
};

/// From the waves of the normal, the mild (+1 standard deviation) and the cold winter. The spread
/// of first flowers is the root of the squares of winter_share x half the difference between mild
/// and cold and of the kind's spread_days; the range reaches 1.28 of it to either side (80 %),
/// twice that where confidence is low. No range starts before the day after `planted`.
WaveForecast forecast_of_three(const BloomParameters& kind, const Wave& normal, const Wave& mild,
                               const Wave& cold, std::optional<Day> planted = std::nullopt);

/// From the waves of recorded years, at least one: the same with their standard deviation.
WaveForecast forecast_of_years(const BloomParameters& kind, std::span<const Wave> years,
                               std::optional<Day> planted = std::nullopt);

}  // namespace bulbwright
