#pragma once

#include <array>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "base/calendar_day.hpp"
#include "base/quantity.hpp"
#include "catalogue/bulb_state.hpp"
#include "cold/cold.hpp"
#include "cold/pot_temperature.hpp"
#include "flowering/bloom_parameters.hpp"
#include "flowering/wave.hpp"

namespace bulbwright {

/// Bases for which a day's heat is kept, in whole degC from the least up; between them it is joined
/// by straight lines.
inline constexpr double least_base_c = -3.0;
inline constexpr std::size_t base_count = 10;

/// Growth gains nothing above this. common practice: forcers keep to 15 to 18 degC, and 20 brings
/// flowers hardly sooner
inline constexpr double level_above_c = 20.0;

/// One day in a pot as growth feels it.
struct BloomDay {
  double mean_c = 0.0;  ///< of a shoot: midway between the mix and the air at the pot
  /// Its degree-days above each base, levelled at level_above_c.
  std::array<double, base_count> heat{};
  double root_heat = 0.0;  ///< degree-days of the mix above 0 degC, levelled at 15
  /// Of the date, at 45 degrees of the pot's hemisphere but for a third of the way to its own
  /// latitude: more a clock than light, which meets gardens from 30 to 60 degrees better.
  double day_length_h = 12.0;
  double cold_hours = 0.0;  ///< as PotDay
  double cold_kept = 1.0;   ///< as PotDay

  [[nodiscard]] double heat_above(double base_c) const;
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
  BulbState state = BulbState::rooted;
  /// Until then a planted bulb makes roots and nothing else; no effect before `planted`.
  std::optional<Day> grows_from = {};
  double deeper_cm = 0.0;  ///< than the kind is usually planted; negative: shallower
};

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
  double depth_days = 0.0;  ///< by which depth beyond the usual moves the first flower, unsigned
  double stored_weeks = 0.0;
  bool blasted = false;  ///< it would open in such heat that the buds dry up: no flowers
};

/// Predicts a wave. Each day from planting, once the mix has given a dry bulb the heat to root,
/// adds
///   heat x r(c) x l(N), at most F / least_days,
///   r = 1 / (1 + (1/r0 - 1) e^(-(c/s)/k)),
///   l = l_d + (1 - l_d) / (1 + e^(-(N - Nc)/wN)), relieved by storage,
/// c the cold weeks so far (a stored week counting as rho weeks), N the date's day length
/// (HeatDay); the first flowers open when the sum reaches F, which grows with the depth beyond the
/// usual. r is the chill-forcing trade-off F(c) = F (1 + (1/r0 - 1) e^...) written as a rate; so
/// more cold or more heat never makes a wave later, nor does a later planting with the same weeks
/// in store make it earlier, and no date jumps. Cold taken in store is not undone by a warm mix.
/// The wave passes at 1/L(T) a day, L = L10 e^(-b (T - 10)), T held in 2 to 22 degC.
/// Sources of the form and the figures: docs/bloom_model.md. Time O(days); about 10 us.
Wave predict_wave(const BloomParameters& kind, const BloomSeason& season,
                  const BloomPlanting& planting);

/// A wave with what is not known about it.
struct WaveForecast {
  Wave wave;  ///< of the normal winter, or the median of the recorded ones
  Day earliest_first;
  Day latest_last;
  /// By which the winters move the first flower: half the difference between mild and cold, above 0
  /// where the cold one is the later, or the years' standard deviation. 0 where one has no flower.
  double winters_days = 0.0;
};

/// Of what depth moves a wave by: published from nothing to twice as much.
inline constexpr double depth_doubt = 0.8;
/// By which a range grows where confidence is low: this program's own.
inline constexpr double low_confidence_factor = 2.0;

/// From the waves of the normal, the mild (+1 standard deviation) and the cold winter. The spread
/// of first flowers is the root of the squares of winter_share x half the difference between mild
/// and cold, of the kind's spread_days, of its stored_spread_days where it was stored for a week or
/// more, and of what the depth moves it by (its size is not well known); the range reaches 1.28 of
/// it to either side (four in five), twice that where confidence is low. No range starts before the
/// day after `planted`.
WaveForecast forecast_of_three(const BloomParameters& kind, const Wave& normal, const Wave& mild,
                               const Wave& cold, std::optional<Day> planted = std::nullopt);

/// From the waves of recorded years, at least one: the same with their standard deviation.
WaveForecast forecast_of_years(const BloomParameters& kind, std::span<const Wave> years,
                               std::optional<Day> planted = std::nullopt);

}  // namespace bulbwright
