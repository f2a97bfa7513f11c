#include "scheduling/timing_options.hpp"

#include <algorithm>

#include <catch2/catch.hpp>

#include "plan/terrace_fixture.hpp"
#include "scheduling/schedule.hpp"

namespace bulbwright {
namespace {

using namespace terrace;

Day ordinary_of(const std::vector<TimedKind>& kinds, const PotSeason& season) {
  return choose_planting(scheduled_kinds(kinds, season), season.view(), std::nullopt).plant;
}

TEST_CASE("the last planting day leaves two weeks to root before hard frost", "[timing_options]") {
  const PotSeason season = season_of_zone("5a");
  const std::vector<TimedKind> kinds{kind_of("narcissus-large-cupped")};
  const PotWinter& normal = season.winters[season.normal];
  Day frost{2026, 9, 15};
  while (normal.at(frost).frozen_share <= 0.5) ++frost;
  TimingMemo memo{kinds, season};
  const Day ordinary = ordinary_of(kinds, season);
  REQUIRE(frost - ordinary > 21);
  CHECK(TimingOptions(memo, ordinary, std::nullopt).days().back() == frost - 14);
  const TimingOptions lifted{memo, ordinary, std::nullopt, only(TimingLimit::frost)};
  CHECK(lifted.days().back() > frost - 14);
}

TEST_CASE("lifting a limit takes nothing away", "[timing_options][law]") {
  const PotSeason season = season_of_zone("9b");
  const std::vector<TimedKind> kinds{kind_of("tulip-triumph"), kind_of("crocus-large", 2)};
  const Day ordinary = ordinary_of(kinds, season);
  TimingMemo memo{kinds, season};
  const TimingOptions usual{memo, ordinary, std::nullopt};
  CHECK(std::count(usual.days().begin(), usual.days().end(), ordinary) == 1);
  for (std::size_t limit = 0; limit < timing_limits; ++limit) {
    const TimingOptions more{memo, ordinary, std::nullopt, only(static_cast<TimingLimit>(limit))};
    CHECK(std::includes(more.days().begin(), more.days().end(), usual.days().begin(),
                        usual.days().end()));
  }
}

}  // namespace
}  // namespace bulbwright
