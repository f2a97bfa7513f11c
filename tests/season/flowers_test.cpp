#include "season/flowers.hpp"

#include <set>

#include <catch2/catch.hpp>

#include "season/season_fixture.hpp"

using namespace bulbwright;
using namespace bulbwright::terrace;

TEST_CASE("days in flower are those on which some pot has a flower", "[flowers][oracle]") {
  PotHouse house;
  house.add(round_pot("early", 300, {"crocus-large"}), "south");
  house.add(round_pot("late", 380, {"tulip-single-late"}), "south");
  house.add(round_pot("middle", 340, {"narcissus-large-cupped"}), "north");
  const auto open = [&](const std::set<std::size_t>& pots) {
    std::set<Day> days;
    for (const std::size_t pot : pots) {
      for (const PlannedWave& wave : house.pots[pot].plan->waves) {
        for (Day day = wave.first; wave.flowers && day <= wave.last; ++day) days.insert(day);
      }
    }
    return days;
  };
  const std::set<Day> all = open({0, 1, 2});
  const Flowers flowers = flowers_of_all(house.pots);
  CHECK(flowers.display.days_in_flower == static_cast<int>(all.size()));
  int week_days = 0;
  for (const FlowerWeek& week : flowers.weeks) week_days += week.days;
  CHECK(week_days == static_cast<int>(all.size()));
  const std::vector<Flowers> groups = flowers_of_groups(house.pots);
  REQUIRE(groups.size() == 2);
  CHECK(groups[0].group == "south");
  CHECK(groups[0].display.days_in_flower == static_cast<int>(open({0, 1}).size()));
  CHECK(groups[1].pots == std::vector<std::size_t>{2});
}
