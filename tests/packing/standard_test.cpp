#include "packing/standard.hpp"

#include <cmath>

#include <catch2/catch.hpp>

using namespace bulbwright;

// Worked from the definition: depths are those of Outline, which outline_test.cpp checks.
TEST_CASE("what is deep in a standard outline lies as deep in the outline it is nested in",
          "[packing][law]") {
  for (const Shape shape : {Shape::round, Shape::oval, Shape::rectangle, Shape::half_round}) {
    for (double length = 150.0; length < 900.0; length += 93.7) {
      for (double width = 110.0; width < 500.0; width += 61.3) {
        for (const double margin : {0.0, 12.0, 31.7}) {
          const double across = shape == Shape::round ? length : width;
          const double corner =
              shape == Shape::rectangle && width > 200.0 ? 0.4 * std::min(length, width) : 0.0;
          const Section section{shape, Millimetres{length}, Millimetres{across},
                                Millimetres{corner}};
          const packing::Outline outline{section};
          CAPTURE(word_of(shape), length, across, margin);
          for (const packing::Nested& nested : packing::nested_standards(outline, margin)) {
            const packing::Outline body{nested.standard.section};
            int deep = 0;
            for (double x = -500.0; x <= 500.0; x += 20.0) {
              for (double y = -500.0; y <= 900.0; y += 20.0) {
                if (body.depth({x, y}) < nested.standard.margin) continue;
                ++deep;
                if (outline.depth(nested.placed({x, y})) < margin - 1e-7) FAIL_CHECK("outside");
              }
            }
            CHECK(deep > 0);
          }
        }
      }
    }
  }
}

TEST_CASE("outlines of nearly one size are answered from the same standards", "[packing][law]") {
  const auto standards = [](double length, double width) {
    return packing::nested_standards(
        packing::Outline{{Shape::rectangle, Millimetres{length}, Millimetres{width}, {}}}, 30.0);
  };
  const auto a = standards(600.0, 200.0), b = standards(600.5, 200.1);
  REQUIRE(a.size() == b.size());
  REQUIRE(a.size() >= 3);
  for (std::size_t k = 0; k < a.size(); ++k) {
    CHECK(a[k].standard.section == b[k].standard.section);
    CHECK(b[k].scale >= a[k].scale);
  }
}
