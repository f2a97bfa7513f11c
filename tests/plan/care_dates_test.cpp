#include "plan/care_dates.hpp"

#include <algorithm>

#include <catch2/catch.hpp>

#include "cold/cold_plan.hpp"
#include "flowering/pot_season_fixture.hpp"

using namespace bulbwright;

namespace {

const PlannedDate* find(const std::vector<PlannedDate>& dates, Task task) {
  const auto found = std::find_if(dates.begin(), dates.end(),
                                  [&](const PlannedDate& d) { return d.task == task; });
  return found == dates.end() ? nullptr : &*found;
}

}  // namespace

TEST_CASE("a refrigerated kind is ordered, stored, checked, planted and seen in this order",
          "[care_dates]") {
  const PotSeason season = fixture::steady_season(6.0, 7.0, 5.0);
  TaxonCold cold;
  cold.storage_weeks = 8.0;
  cold.storage_start = Day{2026, 11, 13};
  cold.storage_end = Day{2027, 1, 8};
  PlannedWave wave;
  wave.first = Day{2027, 3, 10};
  wave.last = Day{2027, 3, 22};
  const std::vector<CareKind> kinds{{fixture::catalogue().find("tulip-triumph"), 1, &cold, &wave,
                                     Day{2027, 2, 10}, std::nullopt}};
  const auto dates = care_dates({kinds, Day{2027, 1, 8}, &season.winters[2], true});
  for (std::size_t i = 1; i < dates.size(); ++i) CHECK(dates[i - 1].date <= dates[i].date);
  REQUIRE(find(dates, Task::storage_start));
  CHECK(find(dates, Task::storage_start)->date == Day{2026, 11, 13});
  CHECK(find(dates, Task::order_by)->date == Day{2026, 10, 16});
  CHECK(find(dates, Task::storage_check)->until == Day{2027, 1, 8});
  CHECK(find(dates, Task::uncover)->date == Day{2027, 2, 10});
  CHECK(find(dates, Task::flower)->until == Day{2027, 3, 22});
  CHECK_FALSE(find(dates, Task::shelter));
}

TEST_CASE("the rain of the winter decides how a pot is watered, and that it is kept off",
          "[care_dates]") {
  const PotSeason season = fixture::steady_season(6.0, 7.0, 5.0);
  TaxonCold cold;
  PlannedWave wave;
  wave.first = Day{2027, 3, 10};
  wave.last = Day{2027, 3, 22};
  const std::vector<CareKind> kinds{{fixture::catalogue().find("tulip-triumph"), 1, &cold, &wave,
                                     Day{2027, 2, 10}, std::nullopt}};
  const auto in = [&](WinterRain winter, Day plant) {
    return care_dates({kinds, plant, &season.winters[2], false, winter});
  };
  const auto wet = in(WinterRain::wet, Day{2026, 11, 1});
  REQUIRE(find(wet, Task::keep_from_rain));
  CHECK(find(wet, Task::keep_from_rain)->date == Day{2026, 11, 2});
  CHECK(find(wet, Task::keep_from_rain)->until == Day{2027, 2, 9});
  CHECK(find(wet, Task::keep_moist)->winter == WinterRain::wet);
  CHECK_FALSE(find(in(WinterRain::ordinary, Day{2026, 11, 1}), Task::keep_from_rain));
  const auto dry = in(WinterRain::dry, Day{2026, 11, 1});
  CHECK_FALSE(find(dry, Task::keep_from_rain));
  CHECK(find(dry, Task::keep_moist)->winter == WinterRain::dry);
  // Planted as the shoots come there is no time left.
  CHECK_FALSE(find(in(WinterRain::wet, Day{2027, 2, 9}), Task::keep_from_rain));
}

TEST_CASE(
    "a pot that freezes is sheltered for the days of frost, and an unstored kind has no checks",
    "[care_dates]") {
  const PotSeason season = fixture::steady_season(2.0, 5.0, -15.0);
  TaxonCold cold;
  PlannedWave wave;
  wave.first = Day{2027, 4, 10};
  wave.last = Day{2027, 4, 22};
  const std::vector<CareKind> kinds{{fixture::catalogue().find("tulip-triumph"), 1, &cold, &wave,
                                     Day{2027, 3, 10}, std::nullopt}};
  const auto dates = care_dates({kinds, Day{2026, 10, 20}, &season.winters[2], false});
  CHECK(find(dates, Task::shelter));
  CHECK_FALSE(find(dates, Task::storage_check));
  CHECK_FALSE(find(dates, Task::uncover));
}

// Common practice: what had to be refrigerated is an annual; trumpets, hyacinths and Darwin hybrids
// come back in the north; daffodils, grape hyacinths and spring starflowers also in mild places.
TEST_CASE("what is worth keeping depends on the place", "[care_dates]") {
  const auto after = [](const char* taxon, bool bulbs_last, double stored, Use use) {
    TaxonCold cold;
    cold.need = need_for(*fixture::catalogue().find(taxon), use);
    cold.use = use;
    cold.storage_weeks = stored;
    CareKind kind;
    kind.taxon = fixture::catalogue().find(taxon);
    kind.cold = &cold;
    return after_here(kind, bulbs_last);
  };
  using enum AfterFlowering;
  for (const char* taxon : {"narcissus-trumpet", "hyacinth", "tulip-darwin-hybrid"}) {
    INFO(taxon);
    CHECK(after(taxon, true, 0.0, Use::outdoors) == keep);
    CHECK(after(taxon, false, 0.0, Use::outdoors) == discard);
    CHECK(after(taxon, true, 8.0, Use::outdoors) == discard);
    CHECK(after(taxon, true, 0.0, Use::forcing) == discard);
  }
  for (const char* taxon : {"narcissus-large-cupped", "muscari", "ipheion"})
    CHECK(after(taxon, false, 0.0, Use::outdoors) == keep);
  CHECK(after("tulip-parrot", true, 0.0, Use::outdoors) == discard);
  CHECK(after("narcissus-tazetta-tender", false, 0.0, Use::outdoors) == dry_off);
  const std::vector<double> cool(12, 18.0), hot{5, 7, 11, 16, 21, 26, 29, 29, 25, 18, 11, 6};
  CHECK(bulbs_last(Celsius{-8.0}, cool));
  CHECK_FALSE(bulbs_last(Celsius{-8.0}, hot));
  CHECK(bulbs_last(Celsius{-20.0}, hot));
}

TEST_CASE("no layer is dried off or thrown out while another feeds", "[care_dates][law]") {
  const PotSeason season = fixture::steady_season(6.0, 7.0, 5.0);
  TaxonCold cold;
  PlannedWave early, late;
  early.first = Day{2027, 2, 1};
  early.last = Day{2027, 2, 12};
  late.first = Day{2027, 4, 1};
  late.last = Day{2027, 4, 20};
  const std::vector<CareKind> kinds{
      {fixture::catalogue().find("tulip-clusiana"), 1, &cold, &late, Day{2027, 3, 1}, {}},
      {fixture::catalogue().find("crocus-species"), 2, &cold, &early, Day{2027, 1, 1}, {}},
      {fixture::catalogue().find("tulip-parrot"), 3, &cold, &late, Day{2027, 3, 1}, {}}};
  const auto dates = care_dates({kinds, Day{2026, 11, 1}, &season.winters[2], false});
  const Day watered = find(dates, Task::keep_moist)->until.value();
  CHECK(watered == Day{2027, 4, 20} + 42);
  for (const PlannedDate& date : dates) {
    if (date.task == Task::after_flowering) CHECK(date.date > watered);
  }
}
