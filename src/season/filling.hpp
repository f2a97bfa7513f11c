#pragma once

#include <optional>
#include <span>
#include <vector>

#include "base/calendar_day.hpp"
#include "base/quantity.hpp"
#include "season/season_pot.hpp"

namespace bulbwright {

/// The days on which pots are filled and planted.

/// Work of filling one pot: to fetch and water it, to bring in the mix, to set each bulb. This
/// program's own rule, for planning a day and not for judging anyone. common practice: a layered
/// pot of thirty litres and seventy bulbs takes most of an hour
inline constexpr double minutes_a_pot = 10.0;
inline constexpr double minutes_a_litre = 0.5;
inline constexpr double minutes_a_bulb = 0.25;

/// Of a plan that can be carried out.
double filling_hours(const Plan& plan);

struct FillingDay {
  Day date;
  std::vector<std::size_t> pots;
  int bulbs = 0;
  Litres mix_loose;  ///< to have ready, perlite included
  Litres perlite;    ///< of it
  double hours = 0.0;
  int days_late = 0;  ///< behind the first of its pots' planting days, where the days are full
};

struct Filling {
  std::vector<FillingDay> days;
  int pots = 0, bulbs = 0;
  Litres mix_loose;
  double hours = 0.0;
};

/// Pots that can be planted, by their planting day. With `hours_a_day` (above 0) no day takes more:
/// what does not fit goes to the next day that has room, the pots that were due first before; a pot
/// that takes longer than a day has one alone. Bulbs in the refrigerator wait there so long.
Filling filling_of(std::span<const SeasonPot> pots, std::optional<double> hours_a_day);

}  // namespace bulbwright
