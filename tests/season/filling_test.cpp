#include "season/filling.hpp"

#include <catch2/catch.hpp>

#include "season/season_fixture.hpp"

using namespace bulbwright;
using namespace bulbwright::terrace;

namespace {

struct TenPots : PotHouse {
  TenPots() {
    for (int i = 0; i < 10; ++i) {
      add(round_pot("pot", 380, {"tulip-triumph", "crocus-large"}, Day{2027, 1, i < 6 ? 2U : 9U}));
    }
  }
};

}  // namespace

TEST_CASE("pots are filled on their planting days, with all of their mix", "[filling]") {
  const TenPots house;
  const Filling filling = filling_of(house.pots, std::nullopt);
  REQUIRE(filling.days.size() == 2);
  CHECK(filling.days[0].pots.size() == 6);
  CHECK(filling.days[1].date == Day{2027, 1, 9});
  double litres = 0.0;
  for (const SeasonPot& pot : house.pots) litres += pot.plan->materials.mix_loose.value();
  CHECK(filling.mix_loose.value() == Approx(litres));
  CHECK(filling.days[0].mix_loose.value() == Approx(0.6 * litres));
}

TEST_CASE("no day takes more hours than there are, and no pot comes early", "[filling][law]") {
  const TenPots house;
  for (const double hours : {0.5, 1.0, 1.7, 3.0, 24.0}) {
    CAPTURE(hours);
    const Filling filling = filling_of(house.pots, hours);
    std::size_t pots = 0;
    for (const FillingDay& day : filling.days) {
      CHECK((day.hours <= hours || day.pots.size() == 1));
      for (const std::size_t pot : day.pots) {
        CHECK(house.pots[pot].plan->plant <= day.date);
        CHECK(day.date - house.pots[pot].plan->plant <= day.days_late);
      }
      pots += day.pots.size();
    }
    CHECK(pots == house.pots.size());
    for (std::size_t i = 1; i < filling.days.size(); ++i)
      CHECK(filling.days[i - 1].date < filling.days[i].date);
  }
}
