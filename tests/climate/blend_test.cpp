#include "climate/blend.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include <catch2/catch.hpp>

#include "base/quantity.hpp"

using namespace bulbwright;

namespace {

std::vector<Station> around(const StationTable& table, GeoPoint at) {
  std::vector<Station> stations;
  for (const auto& near : table.nearest(at, blended_stations)) {
    stations.push_back(table.station(near.index));
  }
  return stations;
}

Blend blend_at(const StationTable& table, GeoPoint at, std::optional<double> elevation_m) {
  return blended(around(table, at), at, elevation_m);
}

double greatest_difference(const MonthlyNormals& a, const MonthlyNormals& b) {
  double greatest = 0.0;
  for (std::size_t m = 0; m < 12; ++m) {
    greatest = std::max(
        {greatest, std::abs(a.tmin_c[m] - b.tmin_c[m]), std::abs(a.tmax_c[m] - b.tmax_c[m])});
  }
  return greatest;
}

double mean_of(const std::array<double, 12>& months) {
  double sum = 0.0;
  for (const double month : months) sum += month / 12;
  return sum;
}

}  // namespace

TEST_CASE("at a station the blend is that station within a quarter of a degree", "[blend][law]") {
  const StationTable table = StationTable::builtin();
  int farther = 0, tried = 0;
  for (std::size_t i = 0; i < table.size(); i += 97, ++tried) {
    const Station station = table.station(i);
    const Blend blend = blend_at(table, station.position, station.elevation_m);
    if (greatest_difference(blend.normals, station.normals) > 0.25) ++farther;
  }
  // Of two stations of other climate in one place both cannot be met.
  CHECK(farther <= tried / 20);
}

TEST_CASE("stations that agree on level and lapse rate are met exactly", "[blend][law]") {
  std::vector<Station> stations;
  const GeoPoint at{45.0, 7.0};
  for (int i = 0; i < 12; ++i) {
    Station station;
    station.position = {45.0 + 0.3 * std::sin(i), 7.0 + 0.4 * std::cos(i)};
    station.elevation_m = 100.0 * (i % 5);
    for (std::size_t m = 0; m < 12; ++m) {
      station.normals.tmin_c[m] = 5.0 - 4.5 * station.elevation_m / 1000;
      station.normals.tmax_c[m] = 15.0 - 4.5 * station.elevation_m / 1000;
    }
    station.rain_mm.fill(40.0);
    stations.push_back(station);
  }
  const Blend blend = blended(stations, at, 300.0);
  for (std::size_t m = 0; m < 12; ++m) {
    CHECK(blend.normals.tmin_c[m] == Approx(5.0 - 1.35).margin(0.011));
    CHECK(blend.normals.tmax_c[m] == Approx(15.0 - 1.35).margin(0.011));
    CHECK(blend.rain_mm[m] == 40.0);
  }
}

TEST_CASE("a winter inversion among the stations is followed", "[blend]") {
  // Every 100 m up it is half a degree warmer: a valley full of cold air.
  std::vector<Station> stations;
  for (int i = 0; i < 16; ++i) {
    Station station;
    station.position = {46.0 + 0.2 * std::sin(1.7 * i), 14.0 + 0.3 * std::cos(1.7 * i)};
    station.elevation_m = 300.0 + 100.0 * (i % 6);
    station.normals.tmin_c.fill(-8.0 + 5.0 * station.elevation_m / 1000);
    station.normals.tmax_c.fill(0.0);
    stations.push_back(station);
  }
  const GeoPoint at{46.0, 14.0};
  const Blend low = blended(stations, at, 350.0), high = blended(stations, at, 750.0);
  CHECK(high.normals.tmin_c[0] > low.normals.tmin_c[0] + 1.0);
}

TEST_CASE("a blend hardly changes from one kilometre to the next", "[blend][law]") {
  const StationTable table = StationTable::builtin();
  for (const GeoPoint at : {GeoPoint{38.58, -121.49}, {47.4, 8.5}, {-41.3, 174.8}, {60.2, 24.9}}) {
    Blend last = blend_at(table, at, 100.0);
    for (int step = 1; step <= 40; ++step) {
      const GeoPoint next{at.latitude + 0.01 * step, at.longitude};
      const Blend blend = blend_at(table, next, 100.0);
      CAPTURE(to_text(next));
      // Beside a station (Zurich's airport lies on the way) it turns to that station's own figures.
      CHECK(greatest_difference(blend.normals, last.normals) < 0.35);
      last = blend;
    }
  }
}

TEST_CASE("the error grows away from stations and where the height is not told", "[blend][law]") {
  const StationTable table = StationTable::builtin();
  // Kew among many stations, the middle of the Sahara among few.
  const Blend kew = blend_at(table, {51.48, -0.29}, 6.0);
  const Blend sahara = blend_at(table, {23.0, 4.0}, 600.0);
  CHECK(mean_of(kew.error_k) < 0.5);
  CHECK(mean_of(sahara.error_k) > 2 * mean_of(kew.error_k));
  const GeoPoint innsbruck{47.26, 11.39};
  const Blend told = blend_at(table, innsbruck, 574.0), untold = blend_at(table, innsbruck, {});
  CHECK(untold.elevation_assumed);
  CHECK_FALSE(told.elevation_assumed);
  CHECK(mean_of(untold.error_k) > mean_of(told.error_k) + 1.0);
}

TEST_CASE("one station alone is moved by height only", "[blend]") {
  Station station;
  station.position = {50.0, 10.0};
  station.elevation_m = 200.0;
  station.normals.tmin_c.fill(1.0);
  station.normals.tmax_c.fill(9.0);
  const Blend blend = blended(std::vector{station}, {50.0, 10.0}, 1200.0);
  CHECK(blend.normals.tmin_c[0] == Approx(1.0 - 4.5).margin(0.02));
  CHECK(blend.normals.tmax_c[0] == Approx(9.0 - 4.5).margin(0.02));
}

// Source: Met Office, "Historic station data", monthly values averaged over 1991-2020 (the rows of
// data/places.csv that name it). None of them is among the stations blended, which are gridded
// values; London and two weather gardens in the Weald lie warmer or in a hollow.
TEST_CASE("Met Office averages are met within six tenths of a degree in the mean",
          "[blend][published]") {
  const StationTable table = StationTable::builtin();
  double low = 0.0, high = 0.0, absolute = 0.0;
  int stations = 0, within = 0, months = 0;
  const PlaceCatalogue catalogue = PlaceCatalogue::builtin();
  for (const Place& place : catalogue.places()) {
    if (place.source.find("Met Office") == std::string::npos) continue;
    CAPTURE(place.name);
    ++stations;
    const Blend blend =
        blend_at(table, {place.latitude, place.longitude}, place.elevation_m.value());
    low += mean_of(blend.normals.tmin_c) - mean_of(place.normals.tmin_c);
    high += mean_of(blend.normals.tmax_c) - mean_of(place.normals.tmax_c);
    const auto ours = monthly_means(blend.normals), theirs = monthly_means(place.normals);
    for (const std::size_t m : {10U, 11U, 0U, 1U, 2U, 3U}) {
      absolute += std::abs(ours[m] - theirs[m]);
      within += std::abs(ours[m] - theirs[m]) <= 1.2 ? 1 : 0;
      ++months;
    }
  }
  REQUIRE(stations == 19);
  CHECK(std::abs(low / stations) < 0.3);
  CHECK(std::abs(high / stations) < 0.3);
  CHECK(absolute / months < 0.6);
  CHECK(within >= 0.9 * months);
}

TEST_CASE("rain stays between none and what stations near by could have", "[blend][law]") {
  const StationTable table = StationTable::builtin();
  for (std::size_t i = 0; i < table.size(); i += 61) {
    const Station station = table.station(i);
    const auto stations = around(table, station.position);
    const Blend there = blended(stations, station.position, station.elevation_m);
    const Blend up = blended(stations, station.position, station.elevation_m + 500.0);
    for (std::size_t m = 0; m < 12; ++m) {
      double wettest = 0.0;
      for (const Station& one : stations) wettest = std::max(wettest, one.rain_mm[m]);
      CAPTURE(station.name, m);
      CHECK(there.rain_mm[m] >= 0.0);
      CHECK(up.rain_mm[m] <= std::ceil(1.5 * wettest));
    }
    double sum = 0.0;
    for (const double weight : there.weights) sum += weight;
    CHECK(sum == Approx(1.0).margin(1e-9));
  }
}

// from memory: what climate tables of 1991 to 2020 give for these towns, the mean of the coldest
// month in degC and the rain of a month of winter (November to February, May to August), mm; good
// to half a degree and a tenth. Towns are 1 to 2 K warmer than the grid.
TEST_CASE("twelve known towns are met", "[blend][published]") {
  struct Town {
    const char* name;
    GeoPoint position;
    double elevation_m, coldest_c, rain_mm;
  };
  const StationTable table = StationTable::builtin();
  double off = 0.0;
  int within = 0;
  for (const Town& town : {Town{"Seattle", {47.45, -122.31}, 130, 5.5, 140},
                           {"Aberdeen", {57.20, -2.20}, 65, 3.8, 75},
                           {"Phoenix", {33.43, -112.00}, 340, 13.5, 21},
                           {"Cape Town", {-33.97, 18.60}, 42, 12.6, 75},
                           {"Santiago", {-33.45, -70.67}, 520, 8.3, 65},
                           {"Hobart", {-42.89, 147.33}, 51, 8.3, 48},
                           {"Sapporo", {43.06, 141.33}, 17, -3.2, 105},
                           {"Reykjavik", {64.13, -21.90}, 52, 0.7, 90},
                           {"Denver", {39.83, -104.66}, 1650, -0.5, 12},
                           {"Lisbon", {38.72, -9.15}, 77, 11.6, 110},
                           {"Vienna", {48.25, 16.36}, 198, 1.0, 43},
                           {"Bergen", {60.38, 5.33}, 12, 2.2, 235}}) {
    CAPTURE(town.name);
    const Blend blend = blend_at(table, town.position, town.elevation_m);
    const auto means = monthly_means(blend.normals);
    const double coldest = *std::min_element(means.begin(), means.end());
    CHECK(std::abs(coldest - town.coldest_c) <= 2.0);
    off += std::abs(coldest - town.coldest_c) / 12;
    double rain = 0.0;
    for (const std::size_t m :
         town.position.latitude < 0 ? std::array{4U, 5U, 6U, 7U} : std::array{10U, 11U, 0U, 1U}) {
      rain += blend.rain_mm[m] / 4;
    }
    CAPTURE(coldest, rain);
    within += std::abs(rain / town.rain_mm - 1) <= 0.35 ? 1 : 0;
  }
  CHECK(off <= 1.0);
  CHECK(within >= 9);
}

// Source: NOAA, "Comparative Climatic Data", normal daily minimum in degF (as tabulated at
// ggweather.com/ccd/mintemp.htm). Positions and heights of the airports from memory. The tolerance
// is what is known of the gridded values against stations: nine in ten months within 1.5 K.
TEST_CASE("NOAA's normal minima of eleven airports are met", "[blend][published]") {
  struct Airport {
    const char* name;
    GeoPoint position;
    double elevation_m, january_f, april_f;
  };
  const StationTable table = StationTable::builtin();
  double absolute = 0.0;
  int count = 0, within = 0;
  for (const Airport& airport : {Airport{"Birmingham", {33.56, -86.75}, 190, 33.8, 50.5},
                                 {"Huntsville", {34.64, -86.79}, 190, 31.8, 50.0},
                                 {"Mobile", {30.69, -88.25}, 65, 40.4, 57.5},
                                 {"Montgomery", {32.30, -86.39}, 60, 35.7, 52.3},
                                 {"Anchorage", {61.17, -150.03}, 40, 11.1, 29.1},
                                 {"Annette", {55.04, -131.57}, 33, 32.4, 37.5},
                                 {"Bethel", {60.78, -161.84}, 38, 0.8, 19.3},
                                 {"Cold Bay", {55.21, -162.72}, 30, 23.6, 29.1},
                                 {"Fairbanks", {64.80, -147.88}, 134, -16.9, 20.6},
                                 {"Juneau", {58.36, -134.56}, 7, 23.7, 33.0},
                                 {"Kodiak", {57.75, -152.49}, 35, 25.9, 32.6}}) {
    const Blend blend = blend_at(table, airport.position, airport.elevation_m);
    const auto check = [&](std::size_t month, double published_f) {
      const double off = blend.normals.tmin_c[month] - from_fahrenheit(published_f).value();
      CAPTURE(airport.name, month, off);
      CHECK(std::abs(off) <= 2.5);
      within += std::abs(off) <= 1.5 ? 1 : 0;
      absolute += std::abs(off);
      ++count;
    };
    check(0, airport.january_f);
    check(3, airport.april_f);
  }
  CHECK(within >= 0.9 * count);
  CHECK(absolute / count < 0.8);
}
