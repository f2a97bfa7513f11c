#pragma once

#include <optional>
#include <string>

#include "base/calendar_day.hpp"
#include "base/quantity.hpp"
#include "catalogue/use.hpp"

namespace bulbwright {

/// The cold of one kind: what it needs, what the winter gives, what the refrigerator must give.

struct WeekNeed {
  double least = 0.0;
  double recommended = 0.0;
  double most = 0.0;
};

/// Cold weeks that the pot gives after planting, by kind of winter.
struct NaturalCold {
  double normal = 0.0;
  double mild = 0.0;
  double cold = 0.0;
};

struct TaxonCold {
  std::string taxon;
  std::string name;
  Use use = Use::outdoors;
  WeekNeed need;
  NaturalCold natural;
  std::optional<Day> natural_until;  ///< last day that counts: before the noses
  double already_weeks = 0.0;        ///< the bulbs came with these
  double storage_weeks =
      0.0;  ///< to give before planting, to a forced pot after it; 0 is an answer
  bool chilled_in_pot = false;  ///< moist-only kinds and forced pots: the pot is chilled
  std::optional<Day> storage_start;
  std::optional<Day> storage_end;  ///< the planting day; of a forced pot the day it comes in
  double missing_weeks = 0.0;     ///< recommended less everything, in the poorest winter; 0 or more
  double lacking_weeks = 0.0;     ///< the same in the normal winter
  double chance_least_met = 1.0;  ///< probability over the winters that the least is reached
  Celsius storage_temperature{5.0};
};

}  // namespace bulbwright
