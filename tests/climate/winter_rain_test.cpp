#include "climate/winter_rain.hpp"

#include <catch2/catch.hpp>

#include "climate/place_search.hpp"

using namespace bulbwright;

namespace {

Place with(double tmin_c, double tmax_c, double rain_mm, double latitude = 45.0) {
  Place place;
  place.latitude = latitude;
  place.normals.tmin_c.fill(tmin_c);
  place.normals.tmax_c.fill(tmax_c);
  place.rain_mm.emplace();
  place.rain_mm->fill(rain_mm);
  return place;
}

WinterRain winter_at(const char* name) {
  static const StationTable stations = StationTable::builtin();
  static const PlaceCatalogue catalogue = PlaceCatalogue::builtin();
  return winter_water(PlaceSearch{catalogue, stations}.find(name)).value().rain;
}

}  // namespace

// Source: Allen and others, FAO Irrigation and Drainage Paper 56, 1998, example 20: July at 45.72
// N, 14.8 to 26.6 degC, evaporates 5.0 mm a day by Hargreaves. The example from memory.
TEST_CASE("evaporation follows from the temperatures", "[winter_rain][published]") {
  MonthlyNormals normals;
  normals.tmin_c.fill(14.8);
  normals.tmax_c.fill(26.6);
  CHECK(reference_evaporation_mm(normals, 45.72, 7) / 31 == Approx(5.0).margin(0.06));
  // In the polar night nothing evaporates, and north and south are half a year apart.
  CHECK(reference_evaporation_mm(normals, 70.0, 12) == 0.0);
  CHECK(reference_evaporation_mm(normals, -45.72, 1) ==
        Approx(reference_evaporation_mm(normals, 45.72, 7)).epsilon(0.1));
}

TEST_CASE("a winter is wet, ordinary or dry by what falls and what dries off", "[winter_rain]") {
  // At 45 N and 2 to 8 degC about 24 mm evaporate in a month.
  const WinterWater water = winter_water(with(2.0, 8.0, 80.0)).value();
  CHECK(water.fallen_mm_a_month == 80.0);
  CHECK(water.evaporation_mm_a_month > 15.0);
  CHECK(water.evaporation_mm_a_month < 35.0);
  CHECK(water.rain == WinterRain::wet);
  CHECK(winter_water(with(2.0, 8.0, 74.0))->rain == WinterRain::ordinary);
  CHECK(winter_water(with(2.0, 8.0, 10.0))->rain == WinterRain::dry);
  // Where it dries off as it falls it is not wet.
  CHECK(winter_water(with(12.0, 24.0, 80.0, 25.0))->rain != WinterRain::wet);
  // Snow soaks nothing, but it is not drought.
  CHECK(winter_water(with(-8.0, -1.0, 110.0))->rain == WinterRain::ordinary);
  Place unknown = with(2.0, 8.0, 80.0);
  unknown.rain_mm.reset();
  CHECK_FALSE(winter_water(unknown));
}

TEST_CASE("the four months are those of the hemisphere", "[winter_rain]") {
  Place place = with(5.0, 12.0, 5.0, -40.0);
  for (const std::size_t m : {4U, 5U, 6U, 7U}) (*place.rain_mm)[m] = 120.0;
  CHECK(winter_water(place)->rain == WinterRain::wet);
  place.latitude = 40.0;
  CHECK(winter_water(place)->rain == WinterRain::dry);
}

// from memory: what these towns' winters are known for.
TEST_CASE("winters of known towns are called what people call them", "[winter_rain]") {
  for (const char* wet : {"Seattle", "Vancouver", "Bergen", "Porto, Portugal", "Cape Town"}) {
    CAPTURE(wet);
    CHECK(winter_at(wet) == WinterRain::wet);
  }
  for (const char* dry : {"Phoenix", "Denver", "Cairo", "Lima"}) {
    CAPTURE(dry);
    CHECK(winter_at(dry) == WinterRain::dry);
  }
  for (const char* ordinary : {"London", "Paris", "Aberdeen", "Sapporo", "Berlin"}) {
    CAPTURE(ordinary);
    CHECK(winter_at(ordinary) == WinterRain::ordinary);
  }
}
