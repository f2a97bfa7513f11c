#pragma once

#include <optional>
#include <span>
#include <vector>

#include "base/calendar_day.hpp"
#include "base/notice.hpp"
#include "flowering/timing.hpp"
#include "flowering/wave.hpp"
#include "scheduling/reports.hpp"

namespace bulbwright {

/// Staggering: the planting day and the weeks of storage of each kind with which the waves of a pot
/// follow each other, so that something is open for as many days as can be without a gap.

struct SpreadAnswer {
  Day plant;
  std::vector<double> weeks;        ///< storage by kind, in the order asked
  std::vector<double> usual_weeks;  ///< what an ordinary plan would store when planting on `plant`
  std::vector<PlannedWave> waves;   ///< by kind
  SpreadReport before;              ///< the ordinary plan
};

/// Searches planting days and storage weeks within the bounds of find_wanted_day()
/// (wanted_day.hpp); `given` fixes the day. The best has, in this order: the longest run of days
/// with something open in the normal winter; the most such days; the fewest kinds chilled less than
/// recommended and than in the ordinary plan; the fewest storage weeks in sum; the planting day
/// nearest the ordinary one. Never a shorter run than the ordinary plan's, which is among the
/// choices. Exact up to search_combination()'s limit. `kinds` is not empty.
SpreadAnswer find_spread(std::span<const TimedKind> kinds, const PotSeason& season,
                         std::optional<Day> given);

/// Before and after. `kinds` are those asked.
std::vector<Notice> spread_notices(const SpreadAnswer& answer, std::span<const TimedKind> kinds);

}  // namespace bulbwright
