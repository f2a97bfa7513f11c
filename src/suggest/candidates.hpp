#pragma once

#include <bitset>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "flowering/timing.hpp"
#include "plan/pot_case.hpp"
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

/// A kind that may stand in a stack, with the days on which it meets what is asked of it alone, at
/// its usual depth.
struct Candidate {
  TimedKind kind;
  Millimetres bulb_height;
  PlantingDays days;
  std::vector<PlantedKind> planted;  ///< by day; only where `days` has it
};

/// What a candidate does planted on a day (counted as in Candidate) so many centimetres deeper than
/// usual; nothing where it then fails what is asked of it alone.
using PlantedDeeper =
    std::function<std::optional<PlantedKind>(const Candidate&, std::size_t day, int deeper_cm)>;

struct Candidates {
  Day first_day;                 ///< of planting
  std::vector<Candidate> kinds;  ///< in the order of the catalogue
  std::vector<LeftOut> left_out;
};

/// `request` with every kind of the catalogue in a layer of its own.
Request request_of_all(Request request, const SuggestionWish& wish, const Catalogue& catalogue);

/// `all`: the case of request_of_all(); `lowest_mix`: in a usual year's hardest frost, which tender
/// kinds must live through.
Candidates find_candidates(const PotCase& all, const SuggestionWish& wish, Celsius lowest_mix);

/// What find_candidates() asks, at any depth. `season` and `wish` must outlive it.
PlantedDeeper planted_deeper(Day first_day, const PotSeason& season, const SuggestionWish& wish);

}  // namespace bulbwright
