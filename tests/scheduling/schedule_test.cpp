#include "scheduling/schedule.hpp"

#include <algorithm>

#include <catch2/catch.hpp>

#include "flowering/pot_season_fixture.hpp"
#include "report/notice_text.hpp"

using namespace bulbwright;
using fixture::kind_of;

namespace {

PotSeason season_at(const char* site, int year = 2026) {
  static const PlaceCatalogue places = PlaceCatalogue::builtin();
  return pot_season(season_at_place(places.find(site), year, Exposure::open),
                    pot_thermal(example_pot()));
}

ScheduledKind scheduled(const TimedKind& kind, const PotSeason& season) {
  return {kind.ask, [&kind, &season](Day planted, const ColdState& start) {
            return shoots_of(kind, season, planted, start);
          }};
}

PlantingChoice chosen(const char* site, std::vector<const char*> taxa,
                      std::optional<Day> given = {}) {
  const PotSeason season = season_at(site);
  std::vector<TimedKind> kinds;
  for (const char* taxon : taxa) kinds.push_back(kind_of(taxon));
  std::vector<ScheduledKind> asks;
  for (const TimedKind& kind : kinds) asks.push_back(scheduled(kind, season));
  return choose_planting(asks, season.view(), given);
}

bool says(const PlantingChoice& choice, NoticeCode code) {
  return std::any_of(choice.notices.begin(), choice.notices.end(),
                     [&](const Notice& n) { return n.code == code; });
}

}  // namespace

// Common practice: in cool climates tulips and daffodils are planted from September to November.
TEST_CASE("a cool place plants in the ordinary autumn", "[schedule]") {
  const PlantingChoice choice = chosen("London", {"tulip-triumph", "narcissus-large-cupped"});
  CHECK(choice.plant >= Day{2026, 9, 15});
  CHECK(choice.plant <= Day{2026, 11, 30});
  CHECK(choice.notices.empty());
}

// Armstrong Garden Centers (California), Which bulbs do I need to chill?: plant late December to
// mid-January after cold. LSU AgCenter: late December to early January.
TEST_CASE("a warm place plants refrigerated tulips from December", "[schedule][published]") {
  const PlantingChoice choice = chosen("New Orleans", {"tulip-triumph"});
  CHECK(choice.plant >= Day{2026, 11, 25});
  CHECK(choice.plant <= Day{2027, 1, 20});
}

TEST_CASE("planting into warm mix names the day to wait for", "[schedule]") {
  const PlantingChoice choice = chosen("London", {"tulip-triumph"}, Day{2026, 9, 16});
  CHECK(choice.plant == Day{2026, 9, 16});
  REQUIRE(says(choice, NoticeCode::mix_warm));
  CHECK(report::plain_text(choice.notices.back()).find("wait for") != std::string::npos);
}

TEST_CASE("the pot's window is the days that suit every kind", "[schedule][law]") {
  for (const char* site : {"London", "New Orleans", "Sacramento", "Albany, New York", "Moscow"}) {
    const PlantingChoice choice =
        chosen(site, {"tulip-triumph", "narcissus-large-cupped", "muscari"});
    CAPTURE(site);
    REQUIRE(choice.windows.size() == 4);
    const PlantingWindow& pot = choice.windows.back();
    if (!pot.days) continue;
    for (std::size_t i = 0; i < 3; ++i) {
      REQUIRE(choice.windows[i].days);
      CHECK(choice.windows[i].days->first <= pot.days->first);
    }
    CHECK(choice.plant >= pot.days->first);
    CHECK(choice.plant <= pot.days->last);
  }
}

TEST_CASE("bulbs that cannot be had yet are not planted", "[schedule]") {
  const PotSeason season = season_at("London");
  TimedKind kind = kind_of("tulip-triumph");
  kind.ask.available = Day{2026, 11, 10};
  const std::vector<ScheduledKind> asks{scheduled(kind, season)};
  CHECK(choose_planting(asks, season.view(), std::nullopt).plant >= Day{2026, 11, 10});
}

TEST_CASE("kinds that dry out are potted soon after they come", "[schedule]") {
  const PlantingChoice choice = chosen("London", {"galanthus"});
  CHECK(choice.plant <= Day{2026, 10, 20});
}

// common practice: bulbs are planted four weeks before hard frost, to root; ground that is frozen
// already cannot be worse than a day before.
TEST_CASE("planting costs more the nearer hard frost is, from four weeks before it",
          "[schedule][law]") {
  PotSeason season = fixture::steady_season(5.0, 5.0, 5.0);
  PotWinter& normal = season.winters[season.normal];
  const Day frost{2026, 12, 20};
  for (PotDay& day : normal.days) {
    const Day date = normal.first + static_cast<int>(&day - normal.days.data());
    if (date >= frost) day.frozen_share = 1.0;
  }
  const TimedKind kind = kind_of("tulip-triumph");
  const ScheduledKind asked = scheduled(kind, season);
  const std::vector<DayCost> costs = planting_costs(asked, season.view());
  const Day first = planting_season(2026, Hemisphere::north).first;
  const auto rooting = [&](Day day) {
    return costs.at(static_cast<std::size_t>(day - first)).rooting;
  };
  CHECK(rooting(first) == 0.0);
  CHECK(rooting(frost - 28) == 0.0);
  CHECK(rooting(frost - 27) > 0.0);
  for (Day day = frost - 28; day < frost; day = day + 1) CHECK(rooting(day + 1) > rooting(day));
  CHECK(rooting(frost + 20) == rooting(frost));
  // Without roots no day is a good one, whatever else it has.
  CHECK(rooting(frost) >= 1.0);
  CHECK(choose_planting(std::vector{asked}, season.view(), std::nullopt).plant <= frost - 28);
}

// data/SOURCES.md: weeks dry in the room and weeks in the refrigerator are counted apart.
TEST_CASE("weeks in the refrigerator do not count as weeks dry in the room", "[schedule]") {
  const PotSeason season = fixture::steady_season(12.0, 12.5, 11.5);
  const TimedKind kind = kind_of("crocus-large");
  const auto room_weeks = static_cast<int>(kind.ask.taxon->max_dry_storage_weeks.value);
  const std::vector<DayCost> costs = planting_costs(scheduled(kind, season), season.view());
  const Day first = planting_season(2026, Hemisphere::north).first;
  REQUIRE(first == kind.ask.available);
  const auto storing = [&](int weeks) {
    return costs.at(static_cast<std::size_t>(7 * weeks)).storing;
  };
  const auto stored = [&](int weeks) {
    return static_cast<int>(time_kind(kind, season, first + 7 * weeks).cold.cold.storage_weeks);
  };
  int longest = room_weeks;  // the last week that costs nothing
  while (longest + 1 - stored(longest + 1) <= room_weeks) ++longest;
  REQUIRE(stored(longest) >= 2);
  CAPTURE(room_weeks, stored(longest));
  CHECK(longest == room_weeks + stored(longest));
  CHECK(storing(longest) == Approx(0.0).margin(1e-9));
  CHECK(storing(longest + 1) > 0.0);
}
