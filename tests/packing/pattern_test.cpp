#include "packing/pattern.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <vector>

#include <catch2/catch.hpp>

#include "packing/outline.hpp"

using namespace bulbwright;

namespace {

PatternLayout laid(const Section& section, Pattern pattern) {
  return lay_pattern(section, {40_mm, 1.0, 0}, 25_mm, 10_mm, pattern);
}

}  // namespace

TEST_CASE("rings and rows stand apart and off the wall as printed", "[packing][law]") {
  for (const Section& section :
       {Section{Shape::round, 380_mm, 380_mm, {}}, Section{Shape::round, 125_mm, 125_mm, {}},
        Section{Shape::oval, 600_mm, 300_mm, {}}, Section{Shape::oval, 250_mm, 480_mm, {}},
        Section{Shape::rectangle, 600_mm, 200_mm, 40_mm},
        Section{Shape::rectangle, 60_mm, 580_mm, {}},
        Section{Shape::half_round, 600_mm, 250_mm, {}}}) {
    const packing::Outline outline{section};
    for (const Pattern pattern : {Pattern::rings, Pattern::rows}) {
      const PatternLayout layout = laid(section, pattern);
      CAPTURE(word_of(section.shape), section.length.value(), word_of(pattern));
      const auto& bulbs = layout.packing.bulbs;
      CHECK(bulbs.size() >= 2);
      CHECK(std::accumulate(layout.sets.begin(), layout.sets.end(), 0) ==
            static_cast<int>(bulbs.size()));
      CHECK(bulbs.size() <= layout.packing.upper_bound);
      for (std::size_t i = 0; i < bulbs.size(); ++i) {
        CHECK(outline.depth({bulbs[i].x_mm, bulbs[i].y_mm}) >= 30.0 - 1e-6);
        for (std::size_t j = 0; j < i; ++j) {
          const double apart =
              std::hypot(bulbs[i].x_mm - bulbs[j].x_mm, bulbs[i].y_mm - bulbs[j].y_mm);
          if (apart < 65.0 - 1e-6) FAIL_CHECK("too near: " << apart);
        }
      }
    }
  }
}

// Worked by hand: one bulb and six round it want a radius of one spacing for the centres.
TEST_CASE("one bulb and six round it are rings of six and one", "[packing]") {
  const PatternLayout layout = laid({Shape::round, 190.1_mm, 190.1_mm, {}}, Pattern::rings);
  CHECK(layout.sets == std::vector<int>{6, 1});
}

// Worked by hand: (580 - 60) / 65 + 1 = 9 in a row; in 600 by 200 mm centres have 540 by 140 mm:
// three rows 70 mm apart, further than 65 mm, of floor(540 / 65) + 1 = 9 each.
TEST_CASE("rows fill a trough that takes them exactly", "[packing]") {
  CHECK(laid({Shape::rectangle, 580_mm, 60_mm, {}}, Pattern::rows).sets == std::vector<int>{9});
  CHECK(laid({Shape::rectangle, 600_mm, 200_mm, {}}, Pattern::rows).sets ==
        std::vector<int>{9, 9, 9});
}

TEST_CASE("over round pots rings or rows hold nineteen in twenty of the densest layouts",
          "[packing][law]") {
  std::size_t dense = 0, by_eye = 0;
  const PackKind kind{40_mm, 1.0, 0};
  for (double width = 200.0; width <= 600.0; width += 10.0) {
    const Section section{Shape::round, Millimetres{width}, Millimetres{width}, {}};
    dense += pack_most(section, {&kind, 1}, 25_mm, 10_mm, Effort::quick).bulbs.size();
    by_eye += std::max(laid(section, Pattern::rings).packing.bulbs.size(),
                       laid(section, Pattern::rows).packing.bulbs.size());
  }
  CHECK(by_eye * 100 >= dense * 95);
}
