#include "season/make_room.hpp"

#include <catch2/catch.hpp>

#include "season/refrigerator.hpp"
#include "season/season_fixture.hpp"

using namespace bulbwright;
using namespace bulbwright::terrace;

namespace {

/// The bags as they are after a change, from plans made anew.
std::vector<Bag> after(PotHouse& house, const std::vector<RoomChange>& changes) {
  std::vector<Bag> bags = house.bags();
  const Replan replan = house.replan();
  for (const RoomChange& change : changes) {
    if (change.sort == RoomChange::Sort::buy_precooled) {
      std::erase_if(bags, [&](const Bag& bag) {
        return bag.taxon == change.taxon &&
               std::find(change.pots.begin(), change.pots.end(), bag.pot) != change.pots.end();
      });
      continue;
    }
    const std::size_t pot = change.pots.front();
    std::erase_if(bags, [&](const Bag& bag) { return bag.pot == pot; });
    for (const Bag& bag : bags_of(*replan(pot, change.plant), pot, catalogue())) {
      bags.push_back(bag);
    }
  }
  return bags;
}

struct ThreePots : PotHouse {
  ThreePots() {
    add(round_pot("steps", 380, {"tulip-triumph", "crocus-large"}, Day{2027, 1, 2}));
    add(round_pot("porch", 340, {"tulip-single-late"}, Day{2027, 1, 2}));
    add(round_pot("urn", 300, {"hyacinth"}, Day{2027, 1, 2}));
  }
};

}  // namespace

TEST_CASE("nothing is advised where all fits", "[make_room]") {
  ThreePots house;
  const std::vector<Bag> bags = house.bags();
  const Litres most = FridgeDays{bags}.most();
  const RoomAdvice advice = advise_room(house.pots, bags, most, catalogue(), house.replan());
  CHECK_FALSE(advice.later);
  CHECK_FALSE(advice.precooled);
  CHECK(advice.together.empty());
}

TEST_CASE("what is advised for any drawer makes everything fit, or says what lacks",
          "[make_room][law]") {
  ThreePots house;
  const std::vector<Bag> bags = house.bags();
  const double most = FridgeDays{bags}.most().value();
  bool any_alone = false, any_together = false;
  for (double share = 0.05; share < 0.99; share += 0.12) {
    const Litres capacity{rounded(share * most, 0.1)};
    CAPTURE(capacity.value(), most);
    const RoomAdvice advice = advise_room(house.pots, bags, capacity, catalogue(), house.replan());
    for (const auto& alone : {advice.later, advice.precooled}) {
      if (!alone) continue;
      any_alone = true;
      CHECK(FridgeDays{after(house, {*alone})}.overflow(capacity).empty());
    }
    if (!advice.together.empty()) {
      any_together = true;
      CHECK_FALSE((advice.later || advice.precooled));
      const Litres lacking = FridgeDays{after(house, advice.together)}.most() - capacity;
      CHECK(rounded(std::max(0.0, lacking.value()), 0.1) == advice.still_lacking.value());
    }
  }
  CHECK(any_alone);
  CHECK(any_together);
}

TEST_CASE("the fewest bulbs are bought precooled", "[make_room][oracle]") {
  ThreePots house;
  const std::vector<Bag> bags = house.bags();
  const Litres most = FridgeDays{bags}.most();
  const Litres capacity = most - Litres{0.1};
  const RoomAdvice advice = advise_room(house.pots, bags, capacity, catalogue(), house.replan());
  int fewest = 1'000'000;
  for (const Bag& out : bags) {
    std::vector<Bag> left;
    for (const Bag& bag : bags) {
      if (&bag != &out) left.push_back(bag);
    }
    if (FridgeDays{left}.overflow(capacity).empty()) fewest = std::min(fewest, out.bulbs);
  }
  REQUIRE(advice.precooled);
  CHECK(advice.precooled->bulbs == fewest);
}

TEST_CASE("a pot with a wanted day does not wait, nor are own bulbs bought", "[make_room]") {
  PotHouse house;
  Request wanted = round_pot("event", 340, {"tulip-triumph"});
  wanted.flower = DayWindow{Day{2027, 3, 25}, Day{2027, 3, 25}};
  wanted.layers.front().count = 12;
  wanted.layers.front().own = true;
  house.add(wanted);
  const std::vector<Bag> bags = house.bags();
  REQUIRE_FALSE(bags.empty());
  const RoomAdvice advice = advise_room(house.pots, bags, Litres{0.1}, catalogue(), house.replan());
  CHECK_FALSE(advice.later);
  CHECK_FALSE(advice.precooled);
  CHECK(advice.together.empty());
  CHECK(advice.still_lacking > Litres{0.0});
}
