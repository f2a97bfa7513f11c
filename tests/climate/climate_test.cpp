#include "climate/climate.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <catch2/catch.hpp>

#include "climate/climate_oracles.hpp"
#include "climate/day_length.hpp"
#include "climate/hourly_temperature.hpp"

using namespace bulbwright;

// Forsythe and others 1995 (CBM) and Meeus (low-precision coordinates of the date) are two other
// published ways to the same number. The series by day of year are up to a day out near the
// equinoxes, which is 0.1 h at 60 degrees.
// A normal distribution: E t^2 = m^2 + s^2, E t^4 = m^4 + 6 m^2 s^2 + 3 s^4.
TEST_CASE("the mean over anomalies is exact for powers", "[climate][law]") {
  for (const double m : {-3.0, 0.0, 8.5}) {
    for (const double s : {0.0, 1.5, 5.0}) {
      CHECK(mean_over_anomalies(m, s, [](double t) { return t * t; }) == Approx(m * m + s * s));
      CHECK(mean_over_anomalies(m, s, [](double t) { return t * t * t * t; }) ==
            Approx(m * m * m * m + 6 * m * m * s * s + 3 * s * s * s * s));
    }
  }
}

TEST_CASE("day length agrees with two other published formulas", "[day_length][oracle]") {
  for (int latitude = -60; latitude <= 60; latitude += 5) {
    for (int day = 0; day < 365; ++day) {
      const Day date = Day{2023, 1, 1} + day;
      CAPTURE(latitude, to_iso(date));
      const double ours = day_length_hours(latitude, date.day_of_year());
      CHECK(std::abs(ours - climate_oracles::day_length_cbm(latitude, date.day_of_year(),
                                                            sunrise_depression)) < 0.11);
      CHECK(std::abs(ours - climate_oracles::day_length_almanac(
                                latitude, date.year(), static_cast<int>(date.month()),
                                static_cast<int>(date.day()))) < 0.11);
    }
  }
}

TEST_CASE("each month of a daily curve keeps the month's mean", "[climate][law]") {
  const PlaceCatalogue catalogue = PlaceCatalogue::builtin();
  for (const bool leap : {false, true}) {
    for (const Place& place : catalogue.places()) {
      const auto days = daily_from_monthly(place.normals.tmin_c, leap);
      REQUIRE(days.size() == (leap ? 366U : 365U));
      std::array<double, 12> sum{}, count{};
      for (int d = 0; d < static_cast<int>(days.size()); ++d) {
        const std::size_t m = (Day{leap ? 2028 : 2027, 1, 1} + d).month() - 1;
        sum[m] += days[static_cast<std::size_t>(d)];
        ++count[m];
      }
      for (std::size_t m = 0; m < 12; ++m) {
        CHECK(std::abs(sum[m] / count[m] - place.normals.tmin_c[m]) < 1e-9);
      }
    }
  }
}

// Rymes and Myers 2001 is the published mean-preserving method; it leaves small steps at the ends
// of months, so 0.25 K is allowed at single days and 0.05 K in the mean.
TEST_CASE("the daily curve agrees with Rymes and Myers", "[climate][oracle]") {
  const PlaceCatalogue catalogue = PlaceCatalogue::builtin();
  for (std::size_t i = 0; i < catalogue.places().size(); i += 10) {
    const Place& place = catalogue.places()[i];
    CAPTURE(place.name);
    const auto ours = daily_from_monthly(place.normals.tmax_c, false);
    const auto theirs = climate_oracles::rymes_myers(place.normals.tmax_c);
    double sum = 0.0;
    for (std::size_t d = 0; d < 365; ++d) {
      CHECK(std::abs(ours[d] - theirs[d]) < 0.25);
      sum += std::abs(ours[d] - theirs[d]);
    }
    CHECK(sum / 365 < 0.05);
  }
}

TEST_CASE("a curve of equal months is level", "[climate][law]") {
  std::array<double, 12> level{};
  level.fill(7.25);
  for (const double day : daily_from_monthly(level, true)) CHECK(day == Approx(7.25).margin(1e-12));
}

TEST_CASE("three winters cover the season with margins in both hemispheres", "[climate]") {
  const PlaceCatalogue catalogue = PlaceCatalogue::builtin();
  for (const char* name : {"Seattle", "Perth, W"}) {
    const Place& place = catalogue.find(name);
    const auto winters = winters_from_normals(place, 2027);
    const DayWindow season = season_days(2027, hemisphere_of(place));
    for (const Winter& winter : winters) {
      CHECK(winter.first == season.first - 31);
      CHECK(winter.last() == season.last + 62);
      for (const DayExtremes& day : winter.days) REQUIRE(day.tmin_c < day.tmax_c);
    }
    // One standard deviation on each side, the same all the season at a single place.
    const double sd = year_to_year_sd_k(place.normals);
    for (std::size_t d = 0; d < winters[0].days.size(); ++d) {
      CHECK(winters[1].days[d].mean_c() - winters[0].days[d].mean_c() == Approx(sd));
      CHECK(winters[0].days[d].mean_c() - winters[2].days[d].mean_c() == Approx(sd));
    }
  }
}

TEST_CASE("a zone's winters lie further apart than those of its stations", "[climate]") {
  const PlaceCatalogue catalogue = PlaceCatalogue::builtin();
  const Place zone = catalogue.zone_profile("9b");
  const auto deviation = winter_deviation_k(zone);
  for (const double k : deviation) CHECK(k > year_to_year_sd_k(zone.normals));
}

TEST_CASE("hours keep the day's extremes and join at midnight", "[hourly][law]") {
  for (const double latitude : {-60.0, -35.0, 0.0, 35.0, 47.6, 60.0}) {
    Winter winter{"", latitude, Day{2026, 1, 1}, {}, {}};
    for (int d = 0; d < 365; ++d) {
      const double mean = 8 + 6 * std::sin(d / 58.0) + 3 * std::sin(d * 1.7);
      winter.days.push_back({mean - 4 - d % 3, mean + 4 + d % 2, false});
    }
    const auto hours = hourly_temperatures(winter);
    REQUIRE(hours.size() == 365U * 24U);
    for (std::size_t d = 1; d + 1 < 365; ++d) {
      CAPTURE(latitude, d);
      const auto [low, high] =
          std::minmax_element(hours.begin() + static_cast<std::ptrdiff_t>(24 * d),
                              hours.begin() + static_cast<std::ptrdiff_t>(24 * d + 24));
      // Whole hours miss the top of the sine by at most half an hour: swing (1 - cos(pi/2/(n+4))).
      CHECK(*high <= winter.days[d].tmax_c + 1e-9);
      CHECK(*high > winter.days[d].tmax_c - 0.25);
      // A warm front lets a night rise from yesterday's dusk to a warmer morning.
      CHECK(*low >= std::min({winter.days[d - 1].tmin_c, winter.days[d].tmin_c,
                              winter.days[d + 1].tmin_c}) -
                        1e-9);
      // No jump over midnight: the night curve is steepest in its first hours.
      CHECK(std::abs(hours[24 * d] - hours[24 * d - 1]) < 3.5);
    }
  }
}
