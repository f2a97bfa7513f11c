#pragma once

#include <functional>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "base/calendar_day.hpp"
#include "base/notice.hpp"
#include "cold/cold_plan.hpp"
#include "cold/pot_temperature.hpp"
#include "flowering/timing.hpp"
#include "scheduling/reports.hpp"

namespace bulbwright {

/// On which day the pot can be planted, and what each other day would cost.

/// A kind with what the schedule must know of it.
struct ScheduledKind {
  ColdAsk ask;
  /// First noses in the normal winter of bulbs planted on a day with so much cold.
  std::function<Day(Day planted, const ColdState& at_planting)> shoots;
};

/// The kinds as the schedule asks for them; they refer to `kinds` and `season`, which must outlive
/// them.
std::vector<ScheduledKind> scheduled_kinds(std::span<const TimedKind> kinds,
                                           const PotSeason& season);

/// The days on which planting is thought of: from the first bulbs (15 September, 15 March in the
/// south) to 24 weeks later.
DayWindow planting_season(int season, Hemisphere hemisphere);

/// Mean temperature of the mix over the week from `day`.
Celsius mix_at_planting(const PotWinter& winter, Day day);

/// True where the mix of the normal winter lies frozen on that day.
bool is_frozen(const PotWinter& winter, Day day);

/// First day from `from` on which the mix is frozen by half, if there is one.
std::optional<Day> first_hard_frost(const PotWinter& winter, Day from);

/// What planting on a day costs one kind. Points are comparable with weeks of missing cold; a day
/// under good_day is a good day.
inline constexpr double good_day = 1.0;
struct DayCost {
  double soil = 0.0;     ///< mix too warm to root
  double cold = 0.0;     ///< cold that then lacks
  double rooting = 0.0;  ///< too near hard frost
  double storing = 0.0;  ///< dry for too long before
  double early = 0.0;    ///< refrigerated bulbs sooner than growers plant them
  [[nodiscard]] double total() const { return soil + cold + rooting + storing + early; }
};

/// The cost of every day of planting_season() for one kind. Cold is worked out once a week and
/// joined by straight lines between.
std::vector<DayCost> planting_costs(const ScheduledKind& kind, const SeasonView& season);

/// The choice: the first day whose cost is within half a point of the least, all kinds together;
/// the windows of each kind and of the pot, with what bounds them.
struct PlantingChoice {
  Day plant;
  std::vector<PlantingWindow> windows;  ///< one a kind, then the pot's
  std::vector<Notice> notices;
};
PlantingChoice choose_planting(std::span<const ScheduledKind> kinds, const SeasonView& season,
                               std::optional<Day> given);

}  // namespace bulbwright
