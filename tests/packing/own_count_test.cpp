// Own bulbs: place_count().
#include <cmath>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "packing/packing.hpp"

using namespace bulbwright;

namespace {

Packing own(const Section& section, int n, Effort effort = Effort::quick) {
  const PackKind kind{40_mm, 1.0, n};
  return place_count(section, {&kind, 1}, 3_mm, 10_mm, effort);
}

}  // namespace

// Worked by hand: each of n bulbs in the middle of its share of the length.
TEST_CASE("two or three own bulbs stand in a trough evenly and in its middle", "[packing]") {
  const Section trough{Shape::rectangle, 800_mm, 200_mm, {}};
  const Packing two = own(trough, 2), three = own(trough, 3);
  REQUIRE(two.bulbs.size() == 2);
  CHECK(two.bulbs[0].x_mm == Approx(-200.0));
  CHECK(two.bulbs[1].x_mm == Approx(200.0));
  CHECK(two.bulbs[0].y_mm == Approx(0.0).margin(0.001));
  REQUIRE(three.bulbs.size() == 3);
  CHECK(three.bulbs[0].x_mm == Approx(-266.67).margin(0.011));
  CHECK(three.bulbs[1].x_mm == Approx(0.0).margin(0.011));
  CHECK(three.bulbs[2].x_mm == Approx(266.67).margin(0.011));
}

TEST_CASE("as many own bulbs as pack_most() sets are never refused", "[packing][law]") {
  const PackKind kind{40_mm, 1.0, 0};
  for (const Section& section :
       {Section{Shape::rectangle, 400_mm, 200_mm, {}}, Section{Shape::oval, 400_mm, 250_mm, {}},
        Section{Shape::half_round, 400_mm, 200_mm, {}},
        Section{Shape::round, 330_mm, 330_mm, {}}}) {
    CAPTURE(word_of(section.shape));
    const auto most =
        static_cast<int>(pack_most(section, {&kind, 1}, 3_mm, 10_mm, Effort::normal).bulbs.size());
    for (int n = most - 2; n <= most; ++n) {
      const Packing p = own(section, n);
      CHECK(p.bulbs.size() == static_cast<std::size_t>(n));
      CHECK(p.gap >= 3_mm);
    }
  }
}

TEST_CASE("one own bulb more never stands further apart", "[packing][law]") {
  for (const Section& section :
       {Section{Shape::rectangle, 800_mm, 250_mm, {}}, Section{Shape::oval, 500_mm, 300_mm, {}},
        Section{Shape::round, 380_mm, 380_mm, {}}}) {
    CAPTURE(word_of(section.shape));
    double before = 1e9;
    for (int n = 2; n <= 26; ++n) {
      const double gap = own(section, n).gap.value();
      CAPTURE(n);
      CHECK(gap <= before);
      before = gap;
    }
  }
}

// Source: E. Specht's records of tests/vectors/packing_records.csv: gap = 2 (R - wall - d/2) /
// (ratio - 1) - d; printed downwards to 0.1 mm after rounding places to 0.01 mm.
TEST_CASE("own bulbs in a round pot stand as far apart as the record lets them",
          "[packing][published]") {
  const Section round{Shape::round, 380_mm, 380_mm, {}};
  CHECK(own(round, 31).gap.value() == Approx(2.0 * 160.0 / (6.291502622 - 1.0) - 40.0).margin(0.2));
  CHECK(own(round, 20).gap.value() == Approx(2.0 * 160.0 / (5.122320754 - 1.0) - 40.0).margin(0.2));
}
