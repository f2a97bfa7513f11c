#include "climate/position.hpp"

#include <cmath>
#include <numbers>

#include <catch2/catch.hpp>

#include "base/error.hpp"

using namespace bulbwright;

TEST_CASE("a position is read with a comma or a blank", "[position][input]") {
  for (const char* text : {"38.58,-121.49", "38.58, -121.49", " 38.58 -121.49 "}) {
    CAPTURE(text);
    CHECK(parse_position(text) == GeoPoint{38.58, -121.49});
  }
  CHECK(parse_position("-45.03,168.66") == GeoPoint{-45.03, 168.66});
  CHECK(parse_position("0 0") == GeoPoint{0.0, 0.0});
}

TEST_CASE("what is no position is refused", "[position][input]") {
  for (const char* text : {"", "here", "38.58", "38.58,", ",", "91,0", "0,181", "1,2,3",
                           "38.58N 121W", "38.58-121.49", "nan,0", "1e1,0", "38,58,-121,49"}) {
    CAPTURE(text);
    CHECK_THROWS_WITH(parse_position(text), Catch::Contains("is no position"));
  }
}

TEST_CASE("a longitude in front is met with the two the other way round", "[position][input]") {
  CHECK_THROWS_WITH(parse_position("-121.49, 38.58"),
                    Catch::Contains("did you mean \"38.58, -121.49\""));
  CHECK_THROWS_WITH(parse_position("200, 300"), !Catch::Contains("did you mean"));
}

TEST_CASE("a position comes back from its own text", "[position][law]") {
  for (int i = -170; i <= 170; i += 17) {
    const GeoPoint position{i / 2.0, i + 0.25};
    CHECK(parse_position(to_text(position)) == position);
  }
  CHECK(to_text({-0.001, -0.001}) == "0.00, 0.00");
}

// On a sphere of 6371 km a quarter of a meridian is 6371 pi / 2, half the equator 6371 pi.
TEST_CASE("distances are those of the sphere", "[position][law]") {
  constexpr double quarter = 6371.0 * std::numbers::pi / 2;
  CHECK(distance_km({0, 0}, {90, 0}) == Approx(quarter));
  CHECK(distance_km({0, -90}, {0, 90}) == Approx(2 * quarter));
  CHECK(distance_km({-90, 12}, {90, 77}) == Approx(2 * quarter));
  CHECK(distance_km({10, 179.5}, {10, -179.5}) ==
        Approx(std::cos(10 * std::numbers::pi / 180) * quarter / 90).epsilon(1e-4));
  CHECK(distance_km({51, 7}, {51, 7}) == 0.0);
}
