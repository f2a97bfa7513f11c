#include "base/calendar_day.hpp"

#include <catch2/catch.hpp>

#include "base/error.hpp"

using namespace bulbwright;

TEST_CASE("days count on without a hole for three centuries", "[calendar_day][law]") {
  Day day{1900, 1, 1};
  for (int n = 0; n < 110'000; ++n) {
    const Day next = day + 1;
    REQUIRE(next - day == 1);
    REQUIRE(parse_day(to_iso(day)) == day);
    REQUIRE((next.day() == day.day() + 1 || next.day() == 1));
    day = next;
    if (day.year() > 2200) break;
  }
}

TEST_CASE("a date that is none is refused with the reason", "[calendar_day][input]") {
  CHECK_THROWS_WITH(parse_day("2027-02-29"), R"("2027-02-29": February 2027 has 28 days)");
  CHECK_THROWS_WITH(parse_day("2027-13-01"), R"("2027-13-01": there is no month 13)");
  for (const char* text :
       {"2028-2-8", "28-02-28", "+2028-02-28", "2028-02-28x", "1899-12-31", "2201-01-01", ""}) {
    CAPTURE(text);
    CHECK_THROWS_AS(parse_day(text), InvalidValue);
  }
}

TEST_CASE("a season is a year of growth, south of the equator a calendar year", "[calendar_day]") {
  CHECK(season_days(2026, Hemisphere::north).first == Day{2026, 7, 1});
  CHECK(season_days(2026, Hemisphere::north).last == Day{2027, 6, 30});
  CHECK(season_of(Day{2027, 1, 8}, Hemisphere::north) == 2026);
  CHECK(season_of(Day{2027, 1, 8}, Hemisphere::south) == 2027);
}

// ISO 8601-1:2019: 8 January 2027 is a Friday (day count from the known Thursday 1 January 1970).
TEST_CASE("weekdays follow the calendar", "[calendar_day]") {
  CHECK(to_words(Day{2027, 1, 8}, true) == "Fri 8 Jan 2027");
  CHECK(Day{2024, 12, 31}.day_of_year() == 366);
}
