#include "cold/cold_answer.hpp"

#include <catch2/catch.hpp>

#include "base/error.hpp"
#include "climate/climate.hpp"
#include "cold/pot_temperature.hpp"

using namespace bulbwright;

namespace {

const Place& seattle() {
  static const PlaceCatalogue places = PlaceCatalogue::builtin();
  return places.find("Seattle");
}

ColdQuestion question(std::optional<ColdPeriod> period = std::nullopt) {
  return {example_pot(), Exposure::open, period};
}

ColdPeriod exactly(Day first, Day last) {
  return {DayWindow{first, last}, {}, {}};
}

/// A daily record of some days at 3 to 9 degC.
RecordSource record_of(Day first, Day last) {
  return [=](const DaySink& sink) {
    RecordSummary summary;
    summary.format = "daily";
    summary.first = first;
    for (Day day = first; day <= last; ++day) {
      summary.last = day;
      ++summary.days;
      sink({day, {3.0, 9.0, true}, {}}, summary);
    }
    return summary;
  };
}

std::string field_at_fault(const RecordSource& record, std::optional<double> latitude,
                           std::optional<ColdPeriod> period,
                           const std::optional<Place>& place = std::nullopt) {
  try {
    (void)cold_answer(record, place, latitude, question(period));
    return "";
  } catch (const InvalidValue& fault) {
    return fault.field();
  }
}

bool says(const ColdReport& report, NoticeCode code) {
  for (const Notice& notice : report.notices) {
    if (notice.code == code) return true;
  }
  return false;
}

}  // namespace

TEST_CASE("normals answer for the half year of their hemisphere", "[cold_answer]") {
  const ColdReport report = cold_answer(seattle(), question());
  CHECK(report.kind == ColdReport::Kind::three);
  CHECK_FALSE(report.period.exact);
  CHECK(report.period.from == MonthDay{10, 1});
  REQUIRE(report.winters.size() == 3);
  CHECK(report.winters[1].total.cold_weeks < report.winters[0].total.cold_weeks);
  CHECK(report.winters[0].total.cold_weeks < report.winters[2].total.cold_weeks);
  Place south = seattle();
  south.latitude = -south.latitude;
  CHECK(cold_answer(south, question()).period.from == MonthDay{4, 1});
}

TEST_CASE("normals answer for a year at most, and across two seasons", "[cold_answer]") {
  const ColdReport report =
      cold_answer(seattle(), question(exactly(Day{2027, 1, 1}, Day{2027, 12, 31})));
  CHECK(report.winters[0].months.size() == 12);
  CHECK(report.winters[0].missing_days == 0);
  CHECK_THROWS_AS(cold_answer(seattle(), question(exactly(Day{2027, 1, 1}, Day{2028, 1, 2}))),
                  InvalidValue);
}

TEST_CASE("a record of years gives each winter and the mean of the whole ones", "[cold_answer]") {
  const ColdReport report =
      cold_answer(record_of(Day{2020, 1, 1}, Day{2023, 6, 30}), std::nullopt, 47.0, question());
  CHECK(report.kind == ColdReport::Kind::yearly);
  REQUIRE(report.winters.size() == 4);  // the first began before the record
  CHECK(report.winters[1].name == "2020/21");
  CHECK(report.mean.measured_days == 182 + 182 + 182);
  CHECK(report.low.cold_weeks <= report.high.cold_weeks);
  CHECK(report.latitude == 47.0);
}

TEST_CASE("a record goes on with the normals of a place where there is one", "[cold_answer]") {
  const RecordSource autumn = record_of(Day{2026, 9, 1}, Day{2026, 12, 31});
  const ColdPeriod winter = exactly(Day{2026, 11, 1}, Day{2027, 2, 28});
  const ColdReport report = cold_answer(autumn, seattle(), 47.0, question(winter));
  CHECK(report.kind == ColdReport::Kind::exact);
  REQUIRE(report.winters.size() == 1);
  CHECK(report.winters[0].measured_days == 61);
  CHECK(report.winters[0].expected_days == 59);
  CHECK_FALSE(says(report, NoticeCode::days_missing));
  CHECK(field_at_fault(autumn, 47.0, winter) == "from");
}

TEST_CASE("what a record lacks is told at its field", "[cold_answer][input]") {
  const RecordSource year = record_of(Day{2020, 1, 1}, Day{2020, 12, 31});
  CHECK(field_at_fault(year, std::nullopt, std::nullopt) == "place.latitude");
  CHECK(field_at_fault(year, 47.0, std::nullopt) == "place.records");  // no whole winter
  CHECK(field_at_fault(record_of(Day{2020, 1, 2}, Day{2020, 1, 1}), 47.0, std::nullopt) ==
        "place.records");
  CHECK(field_at_fault(year, 47.0, exactly(Day{2020, 2, 1}, Day{2020, 2, 29})).empty());
}
