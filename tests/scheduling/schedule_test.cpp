#include "scheduling/schedule.hpp"

#include <algorithm>

#include <catch2/catch.hpp>

#include "flowering/pot_season_fixture.hpp"

using namespace bulbwright;
using fixture::kind_of;

namespace {

PotSeason season_at(const char* site, int year = 2026) {
  static const PlaceCatalogue places = PlaceCatalogue::builtin();
  return pot_season(setting_from_place(places.find(site), year, Exposure::open),
                    example_pot_thermal());
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

bool says(const PlantingChoice& choice, const std::string& code) {
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
  REQUIRE(says(choice, "mix-warm"));
  CHECK(choice.notices.back().text.find("wait for") != std::string::npos);
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
