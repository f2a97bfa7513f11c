#pragma once

#include <optional>
#include <span>
#include <vector>

#include "base/calendar_day.hpp"
#include "base/notice.hpp"
#include "flowering/timing.hpp"
#include "flowering/wave.hpp"

namespace bulbwright {

/// Backward planning: from the day or window on which the pot is wanted in flower to the planting
/// day and the weeks of storage of each kind.

/// Nothing nearer than this: the plan is refused.
inline constexpr int wanted_tolerance_days = 10;

struct WantedAnswer {
  DayWindow wanted;                 ///< one day: first = last
  Day plant;                        ///< chosen
  Day ordinary_plant;               ///< what a plan without a wish would choose
  std::vector<double> weeks;        ///< storage by kind, in the order asked
  std::vector<double> usual_weeks;  ///< what an ordinary plan would store when planting on `plant`
  std::vector<PlannedWave> waves;   ///< by kind, as time_kind() gives them for this answer
  Day predicted;                    ///< day_of_most_flower(waves)
  int open = 0;  ///< of a day: kinds open on it; of a window: its days with something open
  /// Of a day: `predicted` less the day. Of a window: 0 where something is open in it, else days
  /// from it to the nearest open flower, negative before it.
  int days_off = 0;
  bool met = false;  ///< as many kinds open as on any day; or every day of the window
  /// False where nothing is open on the wanted day or in the window, and the nearest is more than
  /// wanted_tolerance_days off.
  bool reachable = true;
  std::optional<Remark> limit;  ///< where days_off is not 0: what keeps it from nearer
};

/// Searches every planting day of planting_season() with every whole week of storage that each kind
/// takes. Bounds: bulbs can be had, the mix is cool enough to root (the highest planting
/// temperature of each kind), two weeks to root before hard frost, no kind dry or refrigerated for
/// longer than it takes or chilled less than its least in the poorest winter; what the ordinary
/// plan breaks may be broken as far.
///
/// For a day the best answer has, in this order: the most kinds open on it; the least sum of days
/// from it to their peaks (of all kinds where none can be open); the fewest kinds chilled
/// less than recommended and than in the ordinary plan; the fewest storage weeks in sum; the
/// planting day nearest the ordinary one, the earlier of two. Exact: the terms add up by kind, so
/// each kind is chosen alone. For a window: the most days of it with something open; the longest
/// run of such days; then as above. Exact up to search_combination()'s limit. `kinds` is not empty
/// and each carries its storage temperature and available day.
WantedAnswer find_wanted_day(std::span<const TimedKind> kinds, const PotSeason& season,
                             DayWindow wanted);

/// What is met, or how many days off and why.
std::vector<Notice> wanted_notices(const WantedAnswer& answer);

}  // namespace bulbwright
