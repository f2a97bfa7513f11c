#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/calendar_day.hpp"

namespace bulbwright {

/// A wave is the flowering of one kind in one layer, the display all waves of a pot.

struct PlannedWave {
  std::string taxon;
  std::string name;
  int layer = 1;
  Day first, peak, last;
  Day earliest_first, latest_last;  ///< over the winters
  bool confident = true;            ///< false: under-chilled, dates are only a guide
  bool flowers = true;              ///< false: none this season; the days are the season's last
};

struct DayGap {
  Day from;  ///< first day without a flower
  Day to;    ///< last day without a flower
};

struct Display {
  std::optional<Day> first, last;
  int days_in_flower = 0;  ///< days on which something is open
  std::vector<DayGap> gaps;
  std::optional<DayWindow> longest;  ///< run of days with something open, the earliest of equals
};

}  // namespace bulbwright
