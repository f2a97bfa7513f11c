#pragma once

#include <bitset>
#include <string>
#include <vector>

#include "flowering/timing.hpp"
#include "layers/layering.hpp"
#include "suggest/suggestion.hpp"

namespace bulbwright {

/// Planting days are counted from the first of planting_season().
inline constexpr std::size_t most_planting_days = 192;
using PlantingDays = std::bitset<most_planting_days>;

/// What one kind does when planted on one day.
struct PlantedKind {
  Day first, peak, last;
  double storage_weeks = 0.0;
  double cost = 0.0;  ///< planting_costs(), points
};

/// A kind that may stand in a stack, with the days on which it meets what is asked of it alone.
struct Candidate {
  TimedKind kind;
  Millimetres bulb_height;
  PlantingDays days;
  std::vector<PlantedKind> planted;  ///< by day; only where `days` has it
};

struct Candidates {
  Day first_day;                 ///< of planting
  std::vector<Candidate> kinds;  ///< in the order of the catalogue
  std::vector<LeftOut> left_out;
};

Candidates find_candidates(const PotFile& request, const SuggestionWish& wish,
                           const PlanContext& context, const PotSeason& season);

}  // namespace bulbwright
