#include "season/season.hpp"

#include <catch2/catch.hpp>

#include "season/season_fixture.hpp"

using namespace bulbwright;
using namespace bulbwright::terrace;

TEST_CASE("a pot that cannot be planted is named and takes nothing", "[season]") {
  PotHouse house;
  house.add(round_pot("steps", 380, {"tulip-triumph"}));
  house.add(round_pot("impossible", 380,
                      {"tulip-triumph", "tulip-triumph", "tulip-triumph", "tulip-triumph",
                       "tulip-triumph", "tulip-triumph"}));
  house.pots.push_back({"unread", "unread.json", "", nullptr, "no pot"});
  REQUIRE_FALSE(house.pots[1].ok());
  const Season season = house.season({});
  CHECK_FALSE(season.ok());
  REQUIRE(season.pots.size() == 3);
  for (const SeasonJob& job : season.calendar) CHECK(job.pot == 0);
  CHECK(season.filling.pots == 1);
  for (const ShoppingItem& item : season.shopping.items) {
    for (const ShoppingItem::Share& share : item.shares) CHECK(share.pot == 0);
  }
}

TEST_CASE("a season of one pot has its cautions and its display", "[season]") {
  PotHouse house;
  house.add(round_pot("steps", 380, {"tulip-triumph", "crocus-large"}));
  const Plan& plan = *house.pots.front().plan;
  const Season season = house.season({});
  CHECK(season.flowers.display.days_in_flower == plan.display.days_in_flower);
  REQUIRE(season.cautions.size() == plan.cautions.size());
  for (std::size_t i = 0; i < plan.cautions.size(); ++i)
    CHECK(season.cautions[i].text == plan.cautions[i].text);
  CHECK(season.refrigerator.overflow.empty());
}
