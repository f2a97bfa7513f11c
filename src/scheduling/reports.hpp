#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/calendar_day.hpp"
#include "base/detail.hpp"
#include "flowering/wave.hpp"

namespace bulbwright {

/// What a plan reports of the days that were chosen for it.

/// Days on which a kind may go into the mix.
struct PlantingWindow {
  std::string taxon;  ///< empty: the pot, the intersection
  std::optional<DayWindow> days;
  Remark reason;  ///< what bounds it
};

/// Of a plan made backward from a wanted day or window of flower.
struct WantedReport {
  DayWindow wanted;  ///< one day: first = last
  Day predicted;     ///< the day of most flower
  int open = 0;      ///< of a day: kinds open on it; of a window: its days with something open
  int days_off = 0;  ///< predicted less wanted; of a window: from it to the nearest flower
  bool met = false;  ///< as much open as can be: see WantedAnswer
  std::optional<Remark> limit;  ///< what keeps it from nearer; nothing where nothing is off
};

/// Of a plan whose waves were to follow each other: what an ordinary plan would have given.
struct SpreadReport {
  Day plant_before;
  std::vector<double> weeks_before;  ///< of storage, by kind, bottom layer first
  Display before;
};

}  // namespace bulbwright
