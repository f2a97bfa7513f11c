#include "climate/place_search.hpp"

#include <algorithm>

#include <catch2/catch.hpp>

#include "base/error.hpp"

using namespace bulbwright;

namespace {

const PlaceCatalogue& catalogue() {
  static const PlaceCatalogue places = PlaceCatalogue::builtin();
  return places;
}

const StationTable& stations() {
  static const StationTable table = StationTable::builtin();
  return table;
}

PlaceSearch search() {
  return {catalogue(), stations()};
}

std::vector<PlaceSearch::Found> with_words(const char* text, std::optional<GeoPoint> near = {}) {
  return search().with_words(text, near, 10000);
}

}  // namespace

TEST_CASE("a site of the catalogue keeps its name and its climate", "[place_search][law]") {
  for (const Place& place : catalogue().places()) {
    CAPTURE(place.name);
    const Place found = search().find(place.name);
    CHECK(found.name == place.name);
    CHECK(found.normals == place.normals);
    CHECK(found.zone == place.zone);
    CHECK(found.rain_mm.has_value());
  }
}

TEST_CASE("a station of the table is found by its name", "[place_search]") {
  for (const char* text : {"Chico Municipal Airport", "chico municipal airport, california",
                           "Chico Municipal Airport, California"}) {
    CAPTURE(text);
    CHECK(search().find(text).name == "Chico Municipal Airport, California");
  }
  CHECK(search().find("Feldkirch").country == "AT");
}

TEST_CASE("several of one name are told with state and country", "[place_search][input]") {
  CHECK_THROWS_WITH(search().find("Springfield"),
                    Catch::Contains("fits") && Catch::Contains("(US, "));
  CHECK_THROWS_WITH(search().find("Maryborough"),
                    Catch::Contains("Maryborough, Australia\" (AU, -"));
  CHECK_THROWS_WITH(search().find("Chicoo Municipal"), Catch::Contains("no place is named"));
  CHECK_THROWS_AS(search().find(""), InvalidValue);
}

TEST_CASE("a code of two letters is that country alone", "[place_search]") {
  const auto found = with_words("US");
  CHECK(found.size() > 1500);
  for (const auto& one : found) CHECK(one.place.country == "US");
  // What people write for the ISO code GB: common practice.
  CHECK(with_words("UK").size() == with_words("GB").size());
  const auto canada = with_words("CA");
  CHECK(canada.size() > 300);
  for (const auto& one : canada) CHECK(one.place.country == "CA");
}

TEST_CASE("states, countries and names are words to search by", "[place_search]") {
  const auto has = [](const auto& found, std::string_view name) {
    return std::any_of(found.begin(), found.end(),
                       [&](const auto& one) { return one.place.name == name; });
  };
  CHECK(has(with_words("California"), "Chico Municipal Airport, California"));
  CHECK(has(with_words("US-CA"), "Chico Municipal Airport, California"));
  CHECK(has(with_words("chico ca"), "Chico Municipal Airport, California"));
  CHECK(has(with_words("Austria"), "Feldkirch, Austria"));
  CHECK_FALSE(has(with_words("stria"), "Feldkirch, Austria"));
  CHECK(with_words("no such place anywhere").empty());
}

TEST_CASE("with a position the nearest come first", "[place_search]") {
  const auto found = with_words("US", GeoPoint{38.58, -121.49});
  REQUIRE(found.size() > 100);
  CHECK(found.front().place.name.find("Sacramento") != std::string::npos);
  for (std::size_t i = 1; i < found.size(); ++i) {
    CHECK(found[i].distance_km >= found[i - 1].distance_km);
  }
  const auto nearest = search().nearest({38.58, -121.49}, 25);
  REQUIRE(nearest.size() == 25);
  for (std::size_t i = 1; i < nearest.size(); ++i) {
    CHECK(nearest[i].distance_km >= nearest[i - 1].distance_km);
  }
}
