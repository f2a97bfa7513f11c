#pragma once

#include <string>
#include <vector>

#include "base/calendar_day.hpp"
#include "plan/context.hpp"
#include "plan/plan.hpp"
#include "plan/request.hpp"
#include "suggest/wish.hpp"

namespace bulbwright {

/// Which stacks of kinds suit a pot, a place and a stretch of the calendar: a search over all of
/// them. docs/suggest.md says what is required and how they are ranked.

/// A kind must reach its least cold with this probability.
inline constexpr double least_chance = 0.80;

struct Suggestion {
  Day plant;
  DayWindow planting;              ///< around `plant`, the days that suit every kind
  std::vector<PlannedWave> waves;  ///< by layer, bottom first
  std::vector<TaxonCold> cold;     ///< by layer
  std::vector<int> bulbs;          ///< by layer, packed
  DayWindow stretch;               ///< the longest run of days in the window with flowers
  int days_in_flower = 0;          ///< its length
  int gap_days = 0;                ///< days without a flower between the window's first and last
  double storage_weeks = 0.0;      ///< in sum over the layers
  double chance = 1.0;             ///< least of the layers' chances to reach their least cold
  std::vector<Remark> reasons;
  std::vector<Notice> mind;  ///< what its kinds do to each other
  Request request;           ///< ready for make_plan(), which gives these waves and bulbs
};

/// A kind that is in no stack, and why.
struct LeftOut {
  std::string taxon;
  std::string name;
  Remark reason;
};

struct Suggestions {
  Request request;  ///< pot, place and dates asked for
  SuggestionWish wish;
  std::string place;
  DayWindow window;
  std::vector<Suggestion> found;  ///< best first; the pot of one tulip kind last if it is not above
  std::vector<LeftOut> left_out;  ///< in the order of the catalogue
  int kinds = 0;                  ///< in the catalogue
  int stacks = 0;                 ///< sets of kinds looked at
  int fitting = 0;                ///< that meet every requirement
  std::vector<Notice> notices;
};

/// Searches every set of 1 to most_layers of the catalogue's kinds, planted on every day of
/// planting_season().
///
/// Required of every kind on the planting day: not excluded by the wish, by the mix's last crop or
/// by a lack of cold; a good planting day (planting_costs() under 1 point); the least cold with a
/// probability of least_chance; no potted chilling; some flower in the window. Of every two: no
/// opposite_wishes(). Of the stack, ordered by order_layers(): stack_of() fits the pot.
/// Rank: the longest run of days with something open, within the window; then the fewest storage
/// weeks in sum; then most days with something open; then most flower, days times waves; then the
/// least planting cost to 0.1 points; then the earliest day; then the catalogue's order. Nothing is
/// pruned but what cannot rank (a day that no kind shares is never common again).
/// Shown: the best, then each next best that differs by more than one kind from all shown, and
/// always the best of a single tulip kind if there is one. Bulbs are packed for these alone.
/// `request` gives pot, storage and pests; its layers, plant, flower, spread and order are not
/// read.
/// @throws InvalidValue for a pot that cannot be.
Suggestions suggest(const Request& request, const SuggestionWish& wish, const PlanContext& context);

}  // namespace bulbwright
