#include "plan/care_dates.hpp"

#include <algorithm>

#include <catch2/catch.hpp>

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
