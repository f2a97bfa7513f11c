#pragma once

#include <optional>
#include <span>
#include <vector>

#include "base/calendar_day.hpp"
#include "flowering/wave.hpp"

namespace bulbwright {

/// How well waves fill a stretch of the calendar.

/// Days of a window on which something is open, however many waves are; the longest run of such
/// days without a gap (the earliest of equal ones), nothing where no day is open.
struct OpenDays {
  int days = 0;
  int longest_days = 0;
  std::optional<DayWindow> longest;
};

/// `waves` are first and last days, in any order; they are sorted in place, so that a search can
/// call this often without memory of its own. O(n log n).
OpenDays open_days_of(std::span<DayWindow> waves, DayWindow within);

/// First and last days of planned waves; a kind that does not flower has none, here as below.
std::vector<DayWindow> wave_windows(std::span<const PlannedWave> waves);

/// The day of most flower: the most waves open; among such days the least sum of days to the peaks
/// of the waves then open; of equal days the earliest. For one wave it is the peak. Nothing without
/// a wave.
std::optional<Day> day_of_most_flower(std::span<const PlannedWave> waves);

/// Waves open on a day.
int waves_open(std::span<const PlannedWave> waves, Day day);

}  // namespace bulbwright
