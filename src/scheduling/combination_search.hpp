#pragma once

#include <compare>
#include <span>
#include <vector>

#include "base/calendar_day.hpp"
#include "scheduling/timing_options.hpp"

namespace bulbwright {

/// Which option of each kind, where the kinds count together: their waves cover the calendar.

/// Which of two equal coverages goes first: for a window its days with something open, for a
/// display without a gap the longest run of such days.
enum class CoverageFirst { days, longest_run };

/// What a combination is worth, best first; compared in the order of the members.
struct CombinationKey {
  int first = 0;   ///< days or longest run, negated
  int second = 0;  ///< the other of the two, negated
  int short_of_cold = 0;
  double storage_weeks = 0.0;
  int from_ordinary = 0;  ///< planting, in days
  auto operator<=>(const CombinationKey&) const = default;
};

struct Combination {
  std::size_t day = 0;              ///< index into TimingOptions::days()
  std::vector<std::size_t> option;  ///< by kind
  CombinationKey key;
};

/// Combinations of one day that are tried one by one; beyond that many, coordinate descent.
inline constexpr double most_combinations = 20'000.0;

/// The best over all days; of equal ones the earliest day and the fewest weeks of the first kinds.
/// Each day's combinations are all tried where there are at most most_combinations; otherwise
/// coordinate descent: kind after kind takes its best option while the others stay, until nothing
/// changes, from three starts (each kind's fewest, most and middle weeks); from the best of them
/// two kinds at once, until no pair betters it. `options` has a day.
Combination search_combination(const TimingOptions& options, DayWindow within, CoverageFirst order);

}  // namespace bulbwright
