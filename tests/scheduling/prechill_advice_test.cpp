// What growers, advisers and sellers print about refrigeration, row by row: kinds and places of
// tests/vectors/prechill_advice.csv, on the day that a plan chooses. A row that the program does
// not follow carries its reason, and one that it follows may not.
#include <fstream>
#include <sstream>
#include <string>

#include <catch2/catch.hpp>

#include "base/csv.hpp"
#include "plan/terrace_fixture.hpp"
#include "scheduling/schedule.hpp"
#include "scheduling/storage_weeks.hpp"
#include "source_paths.hpp"

using namespace bulbwright;

namespace {

CsvTable advice() {
  const std::string path = fixture::source_path("tests/vectors/prechill_advice.csv");
  std::ifstream stream{path, std::ios::binary};
  std::ostringstream text;
  text << stream.rdbuf();
  return read_csv(text.str(), path);
}

double weeks_planned(const std::string& taxon, const std::string& at) {
  const Place place = at.starts_with("zone ") ? terrace::places().zone_profile(at.substr(5))
                                              : terrace::places().find(at);
  const PlaceSeason place_season = season_at_place(place, 2026, Exposure::open);
  const PotSeason season = terrace::season_of(place_season);
  TimedKind kind = terrace::kind_of(taxon.c_str(), 1, season.hemisphere);
  kind.ask.late_from = late_planting_from(2026, season.hemisphere, place_season.frost.annual_low);
  kind.ask.stored_from =
      stored_planting_from(2026, season.hemisphere, place_season.frost.annual_low);
  kind.ask.by_week = season_storage(kind, season);
  const Day plant =
      choose_planting(scheduled_kinds({&kind, 1}, season), season.view(), std::nullopt).plant;
  return time_kind(kind, season, plant).cold.cold.storage_weeks;
}

/// Printed weeks are rules of thumb: two more or less are the same advice.
constexpr double same_weeks = 2.0;

}  // namespace

TEST_CASE("refrigeration agrees with printed advice, exceptions explained",
          "[schedule][published]") {
  const CsvTable table = advice();
  int followed = 0, excepted = 0;
  for (const CsvRecord& row : table.records) {
    const auto field = [&](const char* name) { return row.fields[table.column(name)]; };
    const double weeks = weeks_planned(field("taxon"), field("checked_at"));
    const bool yes = field("refrigerate") == "yes";
    bool agrees = (weeks > 0.0) == yes;
    if (yes && !field("weeks_min").empty())
      agrees = agrees && weeks >= std::stod(field("weeks_min")) - same_weeks;
    if (yes && !field("weeks_max").empty())
      agrees = agrees && weeks <= std::stod(field("weeks_max")) + same_weeks;
    ++(agrees ? followed : excepted);
    INFO("line " << row.line << ": " << field("taxon") << " at " << field("checked_at")
                 << ", advised " << field("refrigerate") << ' ' << field("weeks_min") << " to "
                 << field("weeks_max") << ", planned " << weeks << " weeks");
    CHECK(agrees == field("exception").empty());
  }
  CHECK(followed + excepted >= 100);
  CHECK(followed >= 4 * excepted);
}
