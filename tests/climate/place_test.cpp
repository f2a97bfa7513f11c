#include "climate/place.hpp"

#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>

#include "climate/normals_check.hpp"

using namespace bulbwright;

TEST_CASE("the built-in places pass their own checks", "[place]") {
  const PlaceCatalogue catalogue = PlaceCatalogue::builtin();
  CHECK(catalogue.places().size() == 378);
  for (const Place& place : catalogue.places()) {
    CAPTURE(place.name);
    CHECK(normals_faults(place.normals).empty());
    CHECK_FALSE(place.source.empty());
    const auto means = monthly_means(place.normals);
    // Away from the tropics January is the colder month in the north and the warmer in the south.
    if (std::abs(place.latitude) > 25) CHECK((means[0] < means[6]) == (place.latitude > 0));
  }
}

TEST_CASE("a place is found by its name or a unique part of it", "[place]") {
  const PlaceCatalogue catalogue = PlaceCatalogue::builtin();
  CHECK(catalogue.find("san francisco").name == "San Francisco, California");
  CHECK(catalogue.find("Zürich").name == catalogue.find("zurich").name);
  CHECK_THROWS_WITH(catalogue.find("Sann Francisco"), Catch::Contains("did you mean"));
  CHECK_THROWS_WITH(catalogue.find("an"), Catch::Contains("places: ") && Catch::Contains(" more"));
  CHECK_THROWS_AS(catalogue.find(""), InvalidValue);
}

// USDA Plant Hardiness Zone Map: zone 9b is 25 to 30 degF, 5a -20 to -15 degF.
TEST_CASE("zones have the bounds of the USDA map", "[place][published]") {
  CHECK(zone_bounds("9b").low.value() == Approx(-3.889).margin(0.001));
  CHECK(zone_bounds("9b").high.value() == Approx(-1.111).margin(0.001));
  CHECK(zone_bounds("5a").low.value() == Approx(-28.889).margin(0.001));
  for (const char* wrong : {"", "9", "9c", "0a", "14a", "09b", "9b ", "b9", "9bb", "-9b"}) {
    CAPTURE(wrong);
    CHECK_THROWS_AS(zone_bounds(wrong), InvalidValue);
  }
}

TEST_CASE("every zone from 4a to 11b has a profile on both sides of the equator", "[place]") {
  const PlaceCatalogue catalogue = PlaceCatalogue::builtin();
  for (int n = 4; n <= 11; ++n) {
    for (const char* half : {"a", "b"}) {
      const std::string zone = std::to_string(n) + half;
      for (const bool south : {false, true}) {
        const Place profile = catalogue.zone_profile(zone, south);
        CAPTURE(profile.name);
        CHECK(profile.stations >= 3);
        CHECK(normals_faults(profile.normals).empty());
        CHECK((profile.latitude < 0) == south);
      }
    }
  }
}

// Places whose zone stands on a published map (data/places.csv names each source), in the north and
// south of 23 S. A half zone is 2.8 K wide, so 0.8 K of the error is the map's own steps. The
// errors are those that the rule's header states.
TEST_CASE("the lowest temperature estimated from normals is that of the map's zone",
          "[place][published]") {
  struct Errors {
    int places = 0;
    double sum = 0.0, squares = 0.0, sum_cold = 0.0, squares_cold = 0.0, product = 0.0;
    [[nodiscard]] double mean() const { return sum / places; }
    /// Error a kelvin of the coldest month: a wrong slope shows here.
    [[nodiscard]] double slope() const {
      return (product - sum * sum_cold / places) / (squares_cold - sum_cold * sum_cold / places);
    }
  };
  Errors north, south;
  const PlaceCatalogue catalogue = PlaceCatalogue::builtin();
  for (const Place& known : catalogue.places()) {
    if (known.zone.empty() || known.zone_estimated) continue;
    Place unzoned = known;
    unzoned.zone.clear();
    const double error = (annual_low(unzoned) - annual_low(known)).value();
    const double cold = *std::min_element(known.normals.tmin_c.begin(), known.normals.tmin_c.end());
    Errors& errors = known.latitude < -23.0 ? south : north;
    ++errors.places;
    errors.sum += error;
    errors.squares += error * error;
    errors.sum_cold += cold;
    errors.squares_cold += cold * cold;
    errors.product += error * cold;
  }
  REQUIRE(north.places > 100);
  REQUIRE(south.places > 3);
  CHECK(std::abs(north.mean()) < 2.0);
  CHECK(std::sqrt((north.squares + south.squares) / (north.places + south.places)) < 1.8);
  CHECK(std::sqrt(south.squares / south.places) < 2.15);
  CHECK(std::abs(north.slope()) < 0.1);
  CHECK(std::abs(south.mean()) < 1.5);
}
