#pragma once

#include <span>
#include <string>
#include <vector>

#include "base/calendar_day.hpp"
#include "flowering/wave.hpp"
#include "season/season_pot.hpp"

namespace bulbwright {

/// A week of flowers, from a Monday.
struct FlowerWeek {
  Day start;
  int days = 0;  ///< of the week with something open, 0 to 7
  int pots = 0;  ///< with something open on one of them
};

/// A wave and the pot it is in.
struct PottedWave {
  std::size_t pot = 0;
  PlannedWave wave;
};

/// The flowers of several pots taken together.
struct Flowers {
  std::string group;  ///< empty: all pots
  std::vector<std::size_t> pots;
  std::vector<PottedWave> waves;  ///< by first day; `display.joints` count in these
  Display display;
  std::vector<FlowerWeek> weeks;  ///< from the first flower to the last
};

/// The flowers of all pots that can be planted. The chance of a gap is that of two waves of one pot
/// (doubt.hpp); pots of other places, whose winters differ, are a little less sure than it says.
Flowers flowers_of_all(std::span<const SeasonPot> pots);

/// Of each group that is named, in the order in which they come.
std::vector<Flowers> flowers_of_groups(std::span<const SeasonPot> pots);

}  // namespace bulbwright
