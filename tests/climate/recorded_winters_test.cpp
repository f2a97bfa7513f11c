#include "climate/recorded_winters.hpp"

#include <cmath>

#include <catch2/catch.hpp>

#include "climate/climate_vectors.hpp"
#include "climate/frost_climate.hpp"
#include "cold/cold_ledger.hpp"

using namespace bulbwright;

namespace {

/// NOAA daily extremes of Seattle, 2012 to 2015 (tests/vectors/noaa), up to `last`.
std::vector<RecordedDay> seattle(Day last = Day{2015, 12, 31}) {
  const Winter all = climate_vectors::recorded_days("Seattle", 47.45, Day{2012, 1, 1}, last);
  std::vector<RecordedDay> days;
  for (std::size_t d = 0; d < all.days.size(); ++d) {
    days.push_back({all.first + static_cast<int>(d), all.days[d], {}});
  }
  return days;
}

std::vector<RecordedDay> mirrored(std::vector<RecordedDay> days) {
  for (RecordedDay& day : days) day.day = day.day + 184;  // to southern seasons
  return days;
}

}  // namespace

TEST_CASE("each whole winter of a record becomes one on the planned dates", "[records]") {
  const auto days = seattle();
  const RecordedWinters made = winters_from_record(days, 47.45, 2026, std::nullopt);
  REQUIRE(made.winters.size() == 3);
  CHECK(made.winters[0].name == "2012/13");
  CHECK_FALSE(made.measured_until.has_value());
  for (const Winter& winter : made.winters) {
    CHECK(winter.first == winter_days(2026, Hemisphere::north).first);
    CHECK(winter.last() == winter_days(2026, Hemisphere::north).last);
  }
  // 5 January 2027 of the first is 5 January 2013.
  const auto at = static_cast<std::size_t>(Day{2027, 1, 5} - made.winters[0].first);
  CHECK(made.winters[0].days[at].tmin_c ==
        days[static_cast<std::size_t>(Day{2013, 1, 5} - Day{2012, 1, 1})].air.tmin_c);
  CHECK(made.winters[0].days[at].measured);
  // 2014/15 was the warmest, 2012/13 the coldest of the three in the mean of October to May.
  CHECK(made.winters[made.mild].name == "2014/15");
  CHECK(made.mild != made.cold);
  CHECK(made.normal != made.mild);
}

TEST_CASE("a running winter keeps its measured days and goes on with the normals", "[records]") {
  const PlaceCatalogue places = PlaceCatalogue::builtin();
  const Place& place = places.find("Seattle");
  const auto days = seattle(Day{2015, 1, 3});
  const RecordedWinters made = winters_from_record(days, 47.45, 2014, place);
  REQUIRE(made.winters.size() == 3);
  CHECK(made.measured_until == Day{2015, 1, 3});
  const auto expected = winters_from_normals(place, 2014);
  for (std::size_t i = 0; i < 3; ++i) {
    const auto on = [&](Day day) { return static_cast<std::size_t>(day - made.winters[i].first); };
    CHECK(made.winters[i].days[on(Day{2015, 1, 3})].measured);
    CHECK(made.winters[i].days[on(Day{2015, 1, 3})].tmax_c == days.back().air.tmax_c);
    CHECK_FALSE(made.winters[i].days[on(Day{2015, 1, 4})].measured);
    CHECK(made.winters[i].days[on(Day{2015, 1, 4})].tmax_c ==
          expected[i].days[on(Day{2015, 1, 4})].tmax_c);
  }
  // Without normals each earlier recorded winter continues it.
  const RecordedWinters alone = winters_from_record(days, 47.45, 2014, std::nullopt);
  CHECK(alone.winters.size() == 2);
  CHECK(alone.measured_until == Day{2015, 1, 3});
}

TEST_CASE("southern records make southern winters", "[records]") {
  const RecordedWinters made = winters_from_record(mirrored(seattle()), -47.45, 2026, std::nullopt);
  CHECK(made.winters.size() >= 3);
  CHECK(made.winters[0].first == winter_days(2026, Hemisphere::south).first);
  CHECK(made.winters[0].name == "2013");
}

TEST_CASE("a record without a whole winter is refused, or continued", "[records][input]") {
  auto days = seattle(Day{2012, 6, 30});
  CHECK_THROWS_WITH(winters_from_record(days, 47.45, 2026, std::nullopt),
                    Catch::Contains("holds no whole winter"));
  // Half a year of another season is only compared with the place's normals.
  const PlaceCatalogue places = PlaceCatalogue::builtin();
  const RecordedWinters beside = winters_from_record(days, 47.45, 2026, places.find("Seattle"));
  REQUIRE(beside.winters.size() == 3);
  CHECK_FALSE(beside.recorded);
  CHECK(beside.basis.code == RemarkCode::from_normals_beside_records);
  CHECK(beside.winters[0].days.at(200).tmin_c ==
        winters_from_normals(places.find("Seattle"), 2026)[0].days.at(200).tmin_c);
  CHECK_THROWS_AS(winters_from_record({}, 47.45, 2026, std::nullopt), InvalidValue);
}

TEST_CASE("an hourly record keeps its hours", "[records]") {
  auto days = seattle();
  for (RecordedDay& day : days) {
    day.hours.emplace();
    day.hours->fill(day.air.tmin_c);
  }
  const RecordedWinters made = winters_from_record(days, 47.45, 2013, std::nullopt);
  const Winter& winter = made.winters.at(0);
  REQUIRE(winter.hours.size() == 24 * winter.days.size());
  const auto d = static_cast<std::size_t>(Day{2014, 1, 5} - winter.first);
  CHECK(winter.hours[24 * d + 13] == winter.days[d].tmin_c);
}

TEST_CASE("normals and the yearly low of a record are its means", "[records]") {
  const auto days = seattle();
  const auto normals = RecordedNormals{days}.normals();
  REQUIRE(normals.has_value());
  double sum = 0.0;
  int count = 0;
  for (const RecordedDay& day : days) {
    if (day.day.month() != 2) continue;
    sum += day.air.tmin_c;
    ++count;
  }
  CHECK(normals->tmin_c[1] == Approx(sum / count));
  CHECK_FALSE(RecordedNormals{std::span{days}.first(200)}.normals().has_value());
  const auto low = RecordedNormals{days}.annual_low(Hemisphere::north);
  REQUIRE(low.has_value());
  CHECK(low->value() < -2.0);
  CHECK(low->value() > -9.0);
}

// Published chill totals. A published figure is of one or more real winters; ours from normals has
// a mild and a cold winter on its sides (one standard deviation), and the two ranges must meet.
TEST_CASE("normals give chill totals that meet those published", "[cold_table][published]") {
  const PlaceCatalogue places = PlaceCatalogue::builtin();
  const auto totals = [&](const char* name, MonthDay from, MonthDay to) {
    const Place& place = places.find(name);
    const DayWindow window = ColdPeriod{{}, from, to}.starting_in(2026);
    std::vector<ColdFigures> figures;
    for (const Winter& winter :
         winters_from_normals(place, season_of(window.first, hemisphere_of(place)))) {
      figures.push_back(
          cold_table(winter, window, pot_thermal(example_pot()), Exposure::open).total);
    }
    return figures;
  };
  // Sacramento Valley Orchard Source (University of California), table 2: Yuba City, hours below 45
  // degF, 1 November to 1 March, 18 winters: 486 to 1,150. Sacramento lies 65 km away.
  const double hours = totals("Sacramento", {11, 1}, {3, 1})[0].hours_0_7;
  CHECK(hours >= 486);
  CHECK(hours <= 1150);
  // University of California chill calculator as a trade news site printed it, stations on both
  // sides of Fresno: Five Points and Merced, to 28 December 36.0 and 38.6 portions, to 13 December
  // of another winter 24.7 and 27.1.
  const auto december = totals("Fresno", {11, 1}, {12, 28});
  CHECK(december[2].chill_portions >= 36.0);
  CHECK(december[1].chill_portions <= 38.6);
  CHECK(december[0].chill_portions == Approx(37.3).epsilon(0.15));
  const auto early = totals("Fresno", {11, 1}, {12, 13});
  CHECK(early[2].chill_portions >= 24.7);
  CHECK(early[1].chill_portions <= 27.1);
}

// Weeks of cold that extension services give for tulips in a refrigerator: 12 to 16 at 40 to 45
// degF (Iowa State University Extension, 2004), 12 to 15 at 35 to 45 degF (Missouri Botanical
// Garden), 15 to 18 at 40 degF (University of Missouri Extension). They count weeks at one
// temperature, so all of that band must be full cold, as must the 48 degF of rooting rooms (Cornell
// University, 2013).
TEST_CASE("the temperatures of extension tables are full cold", "[cold][published]") {
  for (double f = 35.0; f <= 48.0; f += 1.0) {
    CAPTURE(f);
    CHECK(cold_response(from_fahrenheit(f).value()) == 1.0);
    CHECK(after_storage({}, Weeks{12}, from_fahrenheit(f)).weeks().value() == Approx(12.0));
  }
  // Soil of 55 degF is where planting begins and cold ends; 60 degF gives none.
  CHECK(cold_response(from_fahrenheit(55.0).value()) < 0.15);
  CHECK(cold_response(from_fahrenheit(60.0).value()) == 0.0);
}
