#include "cold/cold_survey.hpp"

#include <numeric>

#include <catch2/catch.hpp>

#include "climate/climate_vectors.hpp"
#include "climate/frost_climate.hpp"
#include "climate/recorded_winters.hpp"

using namespace bulbwright;

namespace {

std::vector<ColdTable> survey(const Winter& winter, const ColdPeriod& period) {
  ColdSurvey result{period, winter.latitude, pot_thermal(example_pot()), Exposure::open};
  for (std::size_t d = 0; d < winter.days.size(); ++d) {
    result.add({winter.first + static_cast<int>(d), winter.days[d], {}});
  }
  return result.finish();
}

}  // namespace

// NOAA daily extremes of Seattle, four winters (tests/vectors/noaa); the figures are those of rows
// C365 to C370 of climate_vectors.csv, made by an independent implementation on the days alone.
TEST_CASE("a record of many years gives the table of each winter", "[cold_table][oracle]") {
  const Winter seattle =
      climate_vectors::recorded_days("Seattle", 47.45, Day{2012, 1, 1}, Day{2015, 12, 31});
  const auto tables = survey(seattle, {{}, {11, 1}, {2, 28}});
  REQUIRE(tables.size() == 5);  // the ends of two more winters
  CHECK_FALSE(is_complete(tables[0]));
  CHECK_FALSE(is_complete(tables[4]));
  const double hours[] = {1751, 1487, 1138}, portions[] = {89.994, 88.53, 88.0};
  for (std::size_t i = 0; i < 3; ++i) {
    const ColdTable& table = tables[i + 1];
    CAPTURE(to_iso(table.window.first));
    CHECK(is_complete(table));
    CHECK(table.total.hours_0_7 == Approx(hours[i]).margin(1));
    CHECK(table.total.chill_portions == Approx(portions[i]).margin(0.05));
    CHECK(table.months.size() == 4);
  }
  const auto exact = survey(seattle, {DayWindow{Day{2012, 11, 1}, Day{2013, 2, 28}}, {}, {}});
  REQUIRE(exact.size() == 1);
  CHECK(exact[0].total.hours_0_7 == tables[1].total.hours_0_7);
  CHECK(exact[0].total.cold_weeks == tables[1].total.cold_weeks);
}

// NOAA daily extremes of Seattle and New York, 2012 to 2015 (tests/vectors/noaa). Without the mean
// over day-to-day anomalies their normals give 8 and 20 % too many cold weeks.
TEST_CASE("normals give the cold weeks of real winters", "[cold_table][oracle]") {
  for (const auto& [city, latitude] : {std::pair{"Seattle", 47.45}, std::pair{"New York", 40.78}}) {
    const Winter record =
        climate_vectors::recorded_days(city, latitude, Day{2012, 1, 1}, Day{2015, 12, 31});
    std::vector<RecordedDay> days;
    for (std::size_t d = 0; d < record.days.size(); ++d) {
      days.push_back({record.first + static_cast<int>(d), record.days[d], {}});
    }
    double real = 0.0, real_hours = 0.0, real_units = 0.0;
    for (const ColdTable& table : survey(record, {{}, {11, 1}, {2, 28}})) {
      if (!is_complete(table)) continue;
      real += table.total.cold_weeks / 3.0;
      real_hours += table.total.hours_0_7 / 3.0;
      real_units += table.total.utah_units / 3.0;
    }
    Place place;
    place.latitude = latitude;
    place.normals = RecordedNormals{days}.normals().value();
    const DayWindow window{Day{2026, 11, 1}, Day{2027, 2, 28}};
    Winter normal = winters_from_normals(place, 2026)[0];
    const auto total = [&] {
      return cold_table(normal, window, pot_thermal(example_pot()), Exposure::open).total;
    };
    const ColdFigures averaged = total();
    for (DayExtremes& day : normal.days) day.anomaly_sd_k = 0.0;
    const ColdFigures smooth = total();
    INFO(city << ": " << averaged.cold_weeks << " from normals, " << smooth.cold_weeks
              << " without anomalies, " << real << " in real winters; hours " << averaged.hours_0_7
              << ", " << smooth.hours_0_7 << ", " << real_hours << "; Utah " << averaged.utah_units
              << ", " << smooth.utah_units << ", " << real_units);
    CHECK(std::abs(averaged.cold_weeks - real) < 0.05 * real);
    CHECK(smooth.cold_weeks > averaged.cold_weeks);
    CHECK(std::abs(averaged.hours_0_7 - real_hours) < 0.12 * real_hours);
    CHECK(std::abs(averaged.utah_units - real_units) < 0.12 * real_units);
  }
}

TEST_CASE("months add up to the total", "[cold_table][law]") {
  const PlaceCatalogue catalogue = PlaceCatalogue::builtin();
  for (const char* name : {"San Francisco", "New Orleans", "Chicago, I", "Perth, W", "Singapore"}) {
    const Place& place = catalogue.find(name);
    const ColdPeriod period = half_year(hemisphere_of(place));
    for (const Winter& winter : winters_from_normals(place, 2026)) {
      const ColdTable table =
          cold_table(winter, period.starting_in(2026), pot_thermal(example_pot()), Exposure::open);
      CAPTURE(name, winter.name);
      ColdFigures sum;
      for (const ColdMonth& month : table.months) {
        sum.days += month.figures.days;
        sum.cold_weeks += month.figures.cold_weeks;
        sum.hours_0_7 += month.figures.hours_0_7;
        sum.chill_portions += month.figures.chill_portions;
        sum.mean_c += month.figures.mean_c * month.figures.days;
      }
      CHECK(table.months.size() == 6);
      CHECK(table.missing_days == 0);
      CHECK(sum.days == table.total.days);
      CHECK(sum.cold_weeks == Approx(table.total.cold_weeks).margin(1e-9));
      CHECK(sum.hours_0_7 == table.total.hours_0_7);
      CHECK(sum.chill_portions == Approx(table.total.chill_portions));
      CHECK(sum.mean_c / sum.days == Approx(table.total.mean_c));
      CHECK(table.total.cold_weeks <= table.total.days / 7.0);
    }
  }
}

TEST_CASE("a table from a winter and one from its days are the same", "[cold_table][law]") {
  const PlaceCatalogue catalogue = PlaceCatalogue::builtin();
  const Winter winter = winters_from_normals(catalogue.find("Seattle"), 2026)[0];
  const DayWindow all{winter.first, winter.last()};
  const ColdTable direct = cold_table(winter, all, pot_thermal(example_pot()), Exposure::open);
  const ColdTable streamed = survey(winter, {all, {}, {}}).at(0);
  CHECK(direct.total.cold_weeks == Approx(streamed.total.cold_weeks).epsilon(1e-12));
  CHECK(direct.total.chill_portions == Approx(streamed.total.chill_portions).epsilon(1e-12));
  CHECK(direct.total.hours_0_7 == streamed.total.hours_0_7);
}

TEST_CASE("days that a record lacks come from what is expected", "[cold_table]") {
  ColdSurvey survey{{DayWindow{Day{2026, 12, 1}, Day{2026, 12, 31}}, {}, {}},
                    45.0,
                    pot_thermal(example_pot()),
                    Exposure::open,
                    [](Day) {
                      return DayExtremes{5, 5, false};
                    }};
  for (int d = 0; d < 10; ++d) survey.add({Day{2026, 12, 5} + d, {5, 5, true}, {}});
  const ColdTable table = survey.finish().at(0);
  CHECK(table.measured_days == 10);
  CHECK(table.expected_days == 21);
  CHECK(table.missing_days == 0);
  CHECK(table.total.cold_weeks == Approx(31 / 7.0));
}

// Hyndman and Fan 1996, definition 7: of 1, 2, 4, 8 the quarter is at 1.75.
TEST_CASE("quantiles follow the definition named", "[cold_table][published]") {
  CHECK(quantile({8, 1, 4, 2}, 0.25) == Approx(1.75));
  CHECK(quantile({8, 1, 4, 2}, 0.5) == Approx(3.0));
  CHECK(quantile({8, 1, 4, 2}, 0.0) == 1.0);
  CHECK(quantile({8, 1, 4, 2}, 1.0) == 8.0);
  CHECK(quantile({7}, 0.9) == 7.0);
}

TEST_CASE("a day of every year is written month first", "[cold_table][input]") {
  CHECK(parse_month_day("02-28") == MonthDay{2, 28});
  for (const char* wrong : {"", "2-28", "02-29", "13-01", "00-10", "0228", "02-3x", "02-00"}) {
    CAPTURE(wrong);
    CHECK_THROWS_AS(parse_month_day(wrong), InvalidValue);
  }
}
