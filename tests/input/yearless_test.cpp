#include "input/yearless.hpp"

#include <catch2/catch.hpp>

#include "input/located_request.hpp"

using namespace bulbwright;
using namespace bulbwright::input;

TEST_CASE("a day without a year lies in every season once", "[yearless][law]") {
  for (const Hemisphere hemisphere : {Hemisphere::north, Hemisphere::south}) {
    for (int season = 1998; season <= 2006; ++season) {
      for (Day day{2004, 1, 1}; day <= Day{2004, 12, 31}; ++day) {
        LocatedRequest asked;
        asked.request.plant = day;
        forget_years(asked);
        CHECK_FALSE(asked.request.plant);
        (void)settle_years(asked, season, hemisphere);
        REQUIRE(asked.request.plant);
        REQUIRE(season_of(*asked.request.plant, hemisphere) == season);
        CHECK(asked.request.plant->month() == day.month());
        const bool leap_day = day.month() == 2 && day.day() == 29;
        const bool there = is_date(asked.request.plant->year(), 2, 29);
        CHECK(asked.request.plant->day() == (leap_day && !there ? 28 : day.day()));
      }
    }
  }
}

TEST_CASE("a day that is moved is told, one that stays is not", "[yearless]") {
  LocatedRequest asked;
  asked.request.plant = Day{2027, 1, 8};
  forget_years(asked);
  CHECK(settle_years(asked, 2026, Hemisphere::north).empty());
  forget_years(asked);
  CHECK(settle_years(asked, 2027, Hemisphere::north) ==
        std::vector<std::string>{"plant: 2027-01-08 is taken as 2028-01-08"});
}

TEST_CASE("days and windows without a year are read, others as ever", "[yearless][input]") {
  LocatedRequest asked;
  Faults faults;
  read_plant({"plant", {}}, "01-08", asked, faults);
  read_flower({"flower", {}}, "12-20..01-10", asked, faults);
  CHECK(asked.yearless.plant == MonthDay{1, 8});
  REQUIRE(asked.yearless.flower);
  (void)settle_years(asked, 2026, Hemisphere::north);
  CHECK(asked.request.flower == DayWindow{Day{2026, 12, 20}, Day{2027, 1, 10}});
  CHECK(faults.size() == 0);
  read_plant({"plant", {}}, "2027-01-09", asked, faults);
  CHECK(asked.request.plant == Day{2027, 1, 9});
  read_plant({"plant", {}}, "13-08", asked, faults);
  read_plant({"plant", {}}, "1-08", asked, faults);
  CHECK(faults.size() == 2);
}
