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

/// What a planting wants in some week of the planting season.
struct StorageOfWeek {
  double given = 0.0;   ///< weeks of storage, as far as the days from delivery allow
  double wanted = 0.0;  ///< were there days enough
};

/// One kind in the pot.
struct ColdAsk {
  const Taxon* taxon = nullptr;
  Use use = Use::outdoors;
  double already_weeks = 0.0;         ///< given before the grower got them
  std::optional<double> fixed_weeks;  ///< storage weeks the grower wants, 0 = none
  Celsius storage_temperature{5.0};
  Day available;          ///< first day in the grower's hands
  bool received = false;  ///< that day was told: they lie there from then on
  /// From this day on a planting is a late one, for which dry bulbs wait in the refrigerator:
  /// absent where frosts are harder than zone 8's.
  std::optional<Day> late_from;
  /// From this day on growers plant refrigerated bulbs: see stored_planting_from().
  std::optional<Day> stored_from;
  /// Outdoors in zone 7 and colder nobody refrigerates for an earlier or a later flower.
  bool never_for_a_wish = false;
  /// storage_by_week(); empty: the planting day is judged alone.
  std::vector<StorageOfWeek> by_week{};
};

/// Refrigerated bulbs are planted from mid-December in zone 9 and warmer, from mid-November in zone
/// 8; in the south, where mix decides, from late April. Nothing in colder places. common practice;
/// tests/vectors/prechill_advice.csv
std::optional<Day> stored_planting_from(int season, Hemisphere hemisphere, Celsius annual_low);

/// 16 December, 16 June in the south, in zone 8 and warmer: tulips and hyacinths planted about New
/// Year have had 8 to 12 weeks of refrigerator. common practice
std::optional<Day> late_planting_from(int season, Hemisphere hemisphere, Celsius annual_low);

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

/// A lack under a quarter of a week is none.
inline constexpr double least_lack_weeks = 0.25;

/// "Nine winters of ten."
inline constexpr double sure_chance = 0.9;

/// Kinds that are planted after cold where winters are warm (tulips, hyacinths, crocuses and the
/// like). The others are refrigerated only where a winter fails them: growers of zones 8 and 9 give
/// daffodils and grape hyacinths none (tests/vectors/prechill_advice.csv).
bool is_chilled_kind(const Taxon& taxon);

/// Bulbs that came with cold wait in a room of 20 degC where no refrigerator has them. common
/// practice
inline constexpr Celsius waiting_room{20.0};

/// The cold that bulbs have had when they are planted on `planted` after weeks of storage: bulbs
/// that came with cold lose of it what the days in the room between take (cold_kept_per_hour()).
ColdState at_planting(const ColdAsk& ask, Day planted, double storage_weeks);

/// First noses in the normal winter of bulbs planted with this much cold.
using ShootsOf = std::function<Day(const ColdState& at_planting)>;

/// Weeks of storage before planting on `planted` and what then still lacks.
///
/// The fewest whole weeks whose total in the normal winter (what the bulbs came with, storage, and
/// what the winter then still gives to bulbs that come up the sooner for it) comes within half a
/// week of the recommended cold, or of the most that any number of weeks reaches, and with which
/// nine winters in ten reach the least. Kinds that are not chilled by custom (is_chilled_kind())
/// are only seen through to the least. Bulbs go into the refrigerator before anyone knows on which
/// day the mix will be cool enough: where `ask` knows its weeks (storage_by_week()) they are the
/// weeks that do for this planting and for every sooner one of growers' days, so that they never
/// fall from one planting day to the next; none where natural cold suffices. At most what the kind
/// takes and what the days between `available` and `planted` allow: `limit` says which of the two
/// bound it. What is colder than full cold counts in full here (winter_response()).
///
/// The chance that the least is reached is the share of the `recorded` winters that reach it, where
/// there are any; else that of a normal distribution of winters on which the cold one lies one
/// standard deviation below the normal one and the mild one as much above, their weeks of cold
/// joined by straight lines.
///
/// A pot for forcing (Use::forcing) stands from its planting on in the dark at the storage
/// temperature, in a refrigerator, a cellar or a frost-free frame, whatever the winter: for the
/// recommended weeks of its kind (`cold_weeks` of data/taxa.csv and their sources), whole ones, and
/// at least the four that roots take.
struct ColdPlan {
  enum class Limit { none, kind, days };
  TaxonCold cold;
  Limit limit = Limit::none;
  double wanted_weeks = 0.0;  ///< storage weeks before any limit
};
ColdPlan plan_cold(const ColdAsk& ask, Day planted, const ShootsOf& shoots,
                   std::span<const PotWinter* const> normal_mild_cold,
                   std::span<const PotWinter* const> recorded = {});

/// What the planting weeks from `ask.available` on want, for ColdAsk::by_week: week i is a planting
/// 7 i days after it. A later week is given no fewer weeks than an earlier one, counted from the
/// week on which growers plant refrigerated bulbs; an earlier one gets what that week does.
/// `shoots(planted)` is plan_cold()'s `shoots` of that day.
std::vector<StorageOfWeek> storage_by_week(const ColdAsk& ask, Day last,
                                           const std::function<ShootsOf(Day)>& shoots,
                                           std::span<const PotWinter* const> normal_mild_cold,
                                           std::span<const PotWinter* const> recorded = {});

/// A pot for forcing stands in the cold at least so long: roots come first. common practice
inline constexpr int forcing_rooting_days = 28;

/// True where fewer than nine winters in ten reach the least cold; for kinds that are not chilled
/// by custom where the normal winter does not.
bool is_under_chilled(const ColdAsk& ask, const ColdPlan& plan);

/// True where so little cold comes in the normal winter that no flower will: under half of the
/// least, which not one winter in twenty reaches. Source: Moe and Wickstrom, Physiologia Plantarum
/// 28, 1973 (abstract): after 2 to 6 weeks of the 12 to 14 that do best many tulips had no flower;
/// that none has is common practice.
bool is_hopeless(const ColdPlan& plan);

/// Weeks in a refrigerator that a kind which needs none would flower the sooner and surer for; 0
/// where they would not help.
double helpful_weeks(const ColdAsk& ask, const ColdPlan& plan);

/// That bulbs of a kind can be bought precooled, where it is too late to chill them: for a planting
/// on `planted`, or for an earlier flower than the plan's.
Notice precooled_notice(const Taxon& taxon, std::optional<Day> planted);

/// What is wrong or risky about a kind's cold, for the grower.
std::vector<Notice> cold_notices(const ColdAsk& ask, const ColdPlan& plan, Day planted);

}  // namespace bulbwright
