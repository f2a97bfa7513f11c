#include "climate/record_offset.hpp"

#include <catch2/catch.hpp>

#include "base/error.hpp"
#include "climate/climate.hpp"
#include "climate/place_account.hpp"

using namespace bulbwright;

namespace {

const Place& seattle() {
  static const PlaceCatalogue places = PlaceCatalogue::builtin();
  return places.find("Seattle");
}

/// The normals of `place` themselves as a record, moved, with a hot day in every twenty.
std::vector<RecordedDay> record_of(const Place& place, double nights_k, double days_k, Day first,
                                   int count) {
  const auto low = daily_from_monthly(place.normals.tmin_c, true);
  const auto high = daily_from_monthly(place.normals.tmax_c, true);
  std::vector<RecordedDay> days;
  for (int i = 0; i < count; ++i) {
    const Day day = first + i;
    const auto at = static_cast<std::size_t>(Day{2000, day.month(), day.day()}.day_of_year() - 1);
    const double spell = i % 20 == 0 ? 15.0 : 0.0;
    days.push_back({day, {low[at] + nights_k + spell, high[at] + days_k + spell, true}, {}});
  }
  return days;
}

std::optional<RecordOffset> compared(const std::vector<RecordedDay>& days, const Place& place) {
  RecordComparison comparison{place};
  for (const RecordedDay& day : days) comparison.add(day);
  return comparison.result();
}

}  // namespace

TEST_CASE("a record tells how much warmer its spot is", "[record_offset]") {
  const auto days = record_of(seattle(), 1.5, 0.4, Day{2023, 11, 1}, 120);  // over a 29 February
  const auto offset = compared(days, seattle());
  REQUIRE(offset);
  CHECK(offset->median.nights.value() == Approx(1.5).margin(1e-9));
  CHECK(offset->median.days.value() == Approx(0.4).margin(1e-9));
  CHECK(offset->days == 120);
  // 1.2 K in a maritime winter's mean, over 120 days by 90.
  CHECK(offset->weather.value() == Approx(1.0));
  CHECK(compared(record_of(seattle(), -3.2, 0.0, Day{2024, 1, 1}, 366), seattle())
            ->median.nights.value() == Approx(-3.2));
}

TEST_CASE("few days, and days that were filled, tell nothing", "[record_offset]") {
  auto days = record_of(seattle(), 1.5, 0.4, Day{2024, 1, 1}, 30);
  CHECK(compared(days, seattle()));
  days.front().air.measured = false;
  CHECK_FALSE(compared(days, seattle()));
}

TEST_CASE("an offset moves the normals and the yearly low, and is compared as if it were not there",
          "[record_offset]") {
  const TemperatureOffset offset{Kelvins{-3.0}, Kelvins{0.5}};
  const Place moved = moved_by(seattle(), offset);
  for (std::size_t m = 0; m < 12; ++m) {
    CHECK(moved.normals.tmin_c[m] == Approx(seattle().normals.tmin_c[m] - 3.0));
    CHECK(moved.normals.tmax_c[m] == Approx(seattle().normals.tmax_c[m] + 0.5));
  }
  CHECK(annual_low(moved).value() == Approx(annual_low(seattle()).value() - 3.0));
  const auto days = record_of(seattle(), 1.5, 0.4, Day{2024, 1, 1}, 60);
  CHECK(compared(days, moved)->median.nights.value() == Approx(1.5));
  CHECK(account_of(moved).offset == offset);
}

TEST_CASE("an offset that would cross minimum and maximum is refused", "[record_offset][input]") {
  CHECK_THROWS_AS(moved_by(seattle(), {Kelvins{15.0}, Kelvins{-15.0}}), InvalidValue);
}

TEST_CASE("the notice of a blend turns into a warning far from stations", "[place_account]") {
  PlaceAccount account;
  account.blended_from = {{"Davis, California", 20.0, 18.0, 9.0, 0.6},
                          {"Chico, California", 120.0, 80.0, 71.0, 0.4}};
  account.farther_stations = 18;
  account.expected_error = Kelvins{0.4};
  REQUIRE(place_notices(account).size() == 1);
  CHECK(place_notices(account)[0].code == NoticeCode::stations_blended);
  account.blended_from[0].distance_km = far_station_km;
  CHECK(place_notices(account)[0].code == NoticeCode::stations_far);
  CHECK(place_notices(account)[0].severity == Severity::warning);
  account.blended_from[0].distance_km = 20.0;
  account.expected_error = uncertain_blend;
  CHECK(place_notices(account)[0].code == NoticeCode::stations_far);
  CHECK(place_notices({}).empty());
}
