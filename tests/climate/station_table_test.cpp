#include "climate/station_table.hpp"

#include <algorithm>
#include <cmath>
#include <fstream>
#include <iterator>
#include <map>

#include <catch2/catch.hpp>
#include <fmt/core.h>

#include "base/csv.hpp"
#include "climate/normals_check.hpp"
#include "source_paths.hpp"

using namespace bulbwright;

namespace {

CsvTable table_of(const std::string& name) {
  std::ifstream file{fixture::source_path("data/places_dense/" + name)};
  const std::string text{std::istreambuf_iterator<char>{file}, {}};
  return read_csv(text, name);
}

}  // namespace

TEST_CASE("the table holds every station of its file but those left out", "[station_table]") {
  const StationTable table = StationTable::builtin();
  const CsvTable file = table_of("places_dense.csv"), left_out = table_of("left_out.csv");
  std::map<std::string, const CsvRecord*> rows;
  for (const CsvRecord& record : file.records)
    rows[record.fields[file.column("station")]] = &record;
  for (const CsvRecord& record : left_out.records) {
    CAPTURE(record.line);
    CHECK(rows.erase(record.fields[left_out.column("station")]) == 1);
  }
  REQUIRE(table.size() == rows.size());
  for (std::size_t i = 0; i < table.size(); ++i) {
    const Station station = table.station(i);
    CAPTURE(station.number);
    const auto row = rows.find(std::string{station.number});
    REQUIRE(row != rows.end());
    const auto is = [&](double value, const std::string& name) {
      return std::abs(value - std::stod(row->second->fields[file.column(name)])) < 0.001;
    };
    bool same = station.country == row->second->fields[file.column("country")] &&
                is(station.position.latitude, "lat") && is(station.position.longitude, "lon") &&
                is(station.elevation_m, "elev_m");
    for (std::size_t m = 0; m < 12; ++m) {
      same = same && is(station.normals.tmin_c[m], fmt::format("tmin_{:02}", m + 1)) &&
             is(station.normals.tmax_c[m], fmt::format("tmax_{:02}", m + 1)) &&
             is(station.rain_mm[m], fmt::format("prec_{:02}", m + 1));
    }
    CHECK(same);
    CHECK(normals_faults(station.normals).empty());
  }
}

TEST_CASE("station names are tidy", "[station_table]") {
  const StationTable table = StationTable::builtin();
  for (std::size_t i = 0; i < table.size(); ++i) {
    const std::string_view name = table.name(i);
    CAPTURE(name);
    CHECK_FALSE(name.empty());
    CHECK(name.find_first_of("?*`\\&") == name.npos);
    CHECK(name.find("  ") == name.npos);
    CHECK(name.find("(Aut)") == name.npos);
    CHECK_FALSE((name.front() == ' ' || name.back() == ' ' || name.back() == ','));
    CHECK(table.country(i).size() == 2);
    CHECK((table.region(i).empty() || table.country(i) == "US" || table.country(i) == "CA"));
  }
}

TEST_CASE("the nearest stations are those of a search over all", "[station_table][oracle]") {
  const StationTable table = StationTable::builtin();
  // The last three look over the pole, over the date line and into an empty ocean.
  for (const GeoPoint at : {GeoPoint{38.58, -121.49},
                            {51.5, -0.1},
                            {-43.5, 172.6},
                            {71.0, 100.0},
                            {-17.0, 179.9},
                            {-50.0, -120.0}}) {
    CAPTURE(to_text(at));
    std::vector<double> all;
    for (std::size_t i = 0; i < table.size(); ++i) {
      all.push_back(distance_km(at, table.position(i)));
    }
    std::sort(all.begin(), all.end());
    const auto near = table.nearest(at, 30);
    REQUIRE(near.size() == 30);
    for (std::size_t k = 0; k < near.size(); ++k) {
      CHECK(near[k].distance_km == all[k]);
      CHECK(distance_km(at, table.position(near[k].index)) == near[k].distance_km);
    }
  }
}

// Towns and seas as any atlas has them.
TEST_CASE("land and sea are told apart", "[station_table]") {
  const StationTable table = StationTable::builtin();
  for (const GeoPoint land : {GeoPoint{38.58, -121.49},
                              {52.37, 4.90},
                              {-33.87, 151.21},
                              {47.0, 8.0},
                              {-34.6, -58.4},
                              {35.0, 135.77}}) {
    CAPTURE(to_text(land));
    CHECK(table.has_land(land));
  }
  for (const GeoPoint sea : {GeoPoint{0, -150},
                             {45, -40},
                             {-50, 90},
                             {56, 3},
                             {-40, 160},
                             {25, -90},
                             {43, 34},
                             {35, 18},
                             {67, 0},
                             {69, -15}}) {
    CAPTURE(to_text(sea));
    CHECK_FALSE(table.has_land(sea));
  }
}
