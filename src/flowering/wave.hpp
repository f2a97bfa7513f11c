#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/calendar_day.hpp"

namespace bulbwright {

/// A wave is the flowering of one kind in one layer, the display all waves of a pot.

/// What makes the day of a first flower unsure: standard deviations in days, by cause; their
/// squares add up. `winter` and `depth` are signed, for they act on all kinds of a pot at once.
struct WaveDoubt {
  double winter = 0.0;   ///< the year's warmth; above 0 where a cold winter is the later one
  double garden = 0.0;   ///< the garden, and its year beyond that: alike for all kinds in it
  double kind = 0.0;     ///< the kind there
  double storage = 0.0;  ///< what a refrigerator adds
  double depth = 0.0;    ///< what is not known of its effect; above 0 where it makes later
};

/// Share of years and gardens in which a wave's range holds its first flower.
inline constexpr double range_share = 0.8;

struct PlannedWave {
  std::string taxon;
  std::string name;
  int layer = 1;
  Day first, peak, last;
  /// The first flower opens from earliest_first to as long after `first` in range_share of years.
  Day earliest_first, latest_last;
  bool confident = true;   ///< false: under-chilled, dates are only a guide
  bool flowers = true;     ///< false: none this season; the days are the season's last
  bool observed = true;    ///< false: no published date of such a kind so treated (observed.hpp)
  double deeper_cm = 0.0;  ///< than the kind is usually planted
  WaveDoubt doubt{};
};

/// Two waves that follow each other.
struct WaveJoint {
  std::size_t before = 0, after = 0;  ///< indices of the waves
  int gap_days = 0;                   ///< days without a flower between them, 0 or less: they meet
  double gap_chance = 0.0;            ///< that at least one day between them has none
};

struct DayGap {
  Day from;             ///< first day without a flower
  Day to;               ///< last day without a flower
  double chance = 1.0;  ///< that there is a gap, of a day at least, between these waves
};

struct Display {
  std::optional<Day> first, last;
  int days_in_flower = 0;  ///< days on which something is open
  std::vector<DayGap> gaps;
  std::optional<DayWindow> longest;  ///< run of days with something open, the earliest of equals
  /// Each wave with the one that follows it, in order: of those before it the one that ends last.
  std::vector<WaveJoint> joints{};
};

}  // namespace bulbwright
