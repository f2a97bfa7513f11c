#pragma once

#include <functional>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "base/calendar_day.hpp"
#include "base/notice.hpp"
#include "catalogue/taxon.hpp"
#include "catalogue/use.hpp"
#include "cold/cold.hpp"
#include "cold/pot_temperature.hpp"
#include "cold/taxon_cold.hpp"

namespace bulbwright {

/// How the weeks of cold that one kind needs are come by: what the winter gives after planting, and
/// what the refrigerator must give before it.

/// One kind in the pot.
struct ColdAsk {
  const Taxon* taxon = nullptr;
  Use use = Use::outdoors;
  double already_weeks = 0.0;         ///< given before the grower got them
  std::optional<double> fixed_weeks;  ///< storage weeks the grower wants, 0 = none
  Celsius storage_temperature{5.0};
  Day available;  ///< first day in the grower's hands
};

/// Which of a taxon's two needs applies (design: outdoor need in a pot that stands out).
WeekNeed need_for(const Taxon& taxon, Use use);

/// The day before which growers cannot have spring bulbs: 15 September, 15 March in the south.
/// common practice
Day earliest_bulbs(int season, Hemisphere hemisphere);

/// Weeks of storage that a kind can take: dry-ok kinds what the catalogue says of dry cold less
/// what they came with, kinds that are never refrigerated none, moist-only kinds (chilled in the
/// pot) their whole need. `planned` is what is given without a word; up to `most` only to reach the
/// least cold, with a notice; beyond it flowers are lost.
struct StorageLimit {
  double planned = 0.0;
  double most = 0.0;
};
StorageLimit storage_limit(const Taxon& taxon, Use use, double already_weeks);

/// Storage weeks are planned in whole weeks; a lack under a quarter of a week is left to the
/// winter.
inline constexpr double least_lack_weeks = 0.25;

/// Cold after planting in each winter, from the planting day to the day before `shoots` (natural
/// cold stops counting at emergence), for bulbs that come with `start`.
NaturalCold natural_cold(std::span<const PotWinter* const> normal_mild_cold, Day planted,
                         Day shoots, const ColdState& start);

/// First noses in the normal winter of bulbs planted with this much cold.
using ShootsOf = std::function<Day(const ColdState& at_planting)>;

/// Weeks of storage before planting on `planted` and what then still lacks.
///
/// storage = recommended - already - natural cold in the poorest of the three winters, in whole
/// weeks, at most what the kind takes and what the days between `available` and `planted` allow.
/// Stored bulbs come up sooner, which ends the natural cold sooner: the weeks are raised until they
/// cover what then lacks. `limit` in the result says which of the two bound it.
///
/// The chance that the least is reached is the share of the `recorded` winters that reach it, where
/// there are any; else that of a normal distribution of winters on which the cold one lies one
/// standard deviation below the normal one and the mild one as much above, their weeks of cold
/// joined by straight lines: so where hard winters freeze the pot both sides may fall short.
struct ColdPlan {
  enum class Limit { none, kind, days };
  TaxonCold cold;
  Limit limit = Limit::none;
  double wanted_weeks = 0.0;  ///< storage weeks before any limit
};
ColdPlan plan_cold(const ColdAsk& ask, Day planted, const ShootsOf& shoots,
                   std::span<const PotWinter* const> normal_mild_cold,
                   std::span<const PotWinter* const> recorded = {});

/// True where the poorest of the three winters leaves less than the least cold.
bool is_under_chilled(const ColdPlan& plan);

/// What is wrong or risky about a kind's cold, for the grower.
std::vector<Notice> cold_notices(const ColdAsk& ask, const ColdPlan& plan, Day planted);

}  // namespace bulbwright
