#include "season/bag.hpp"

#include <catch2/catch.hpp>

#include "season/season_fixture.hpp"

using namespace bulbwright;
using namespace bulbwright::terrace;

// Bulbs to a ventilated export crate of 60 x 40 x 23 cm, which holds air above and around them.
// from memory
TEST_CASE("a bag is smaller than the crate that the trade ships its bulbs in", "[bag]") {
  struct Crate {
    double girth_cm, shape;
    int bulbs;
  };
  constexpr double crate_litres = 55.2;
  for (const Crate& crate :
       {Crate{10.5, 0.85, 1000}, Crate{11.5, 0.85, 750}, Crate{12.5, 0.85, 500},
        Crate{14.5, 0.85, 400}, Crate{11.0, 1.05, 500}}) {
    CAPTURE(crate.girth_cm);
    const double litres = bag_litres(crate.girth_cm, crate.shape, crate.bulbs).value();
    CHECK(litres < crate_litres / 1.6);
    CHECK(litres > crate_litres / 2.6);
  }
}

TEST_CASE("bags hold what is bought of the kinds that are refrigerated", "[bag]") {
  PotHouse house;
  house.add(round_pot("steps", 380, {"tulip-triumph", "narcissus-large-cupped", "crocus-large"},
                      Day{2027, 1, 8}));
  const Plan& plan = *house.pots.front().plan;
  const std::vector<Bag> bags = house.bags();
  std::size_t stored = 0;
  for (const TaxonCold& cold : plan.cold) {
    if (cold.storage_weeks <= 0.0) continue;
    ++stored;
    const auto bag =
        std::find_if(bags.begin(), bags.end(), [&](const Bag& b) { return b.taxon == cold.taxon; });
    REQUIRE(bag != bags.end());
    CHECK(bag->in == *cold.storage_start);
    CHECK(bag->out == plan.plant);
    CHECK_FALSE(bag->potted);
    for (const ShoppingNeed& need : plan.shopping) {
      if (need.taxon == cold.taxon) CHECK(bag->bulbs == need.buy);
    }
    CHECK(bag->litres > Litres{0.0});
  }
  REQUIRE(stored > 0);
  CHECK(bags.size() == stored);
}

TEST_CASE("two layers of one kind share a bag", "[bag]") {
  PotHouse house;
  house.add(round_pot("two", 380, {"tulip-triumph", "tulip-triumph"}, Day{2027, 1, 8}));
  int bulbs = 0;
  for (const ShoppingNeed& need : house.pots.front().plan->shopping) bulbs += need.buy;
  const std::vector<Bag> bags = house.bags();
  REQUIRE(bags.size() == 1);
  CHECK(bags.front().bulbs == bulbs);
}

TEST_CASE("bulbs that are chilled in their pot take no drawer", "[bag]") {
  PotHouse house;
  house.add(round_pot("drops", 250, {"galanthus"}, Day{2027, 1, 8}));
  for (const Bag& bag : house.bags()) {
    CHECK(bag.potted);
    CHECK(FridgeDays{std::span{&bag, 1}}.empty());
  }
}
