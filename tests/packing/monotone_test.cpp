// A wider pot holds at least what a narrower one holds, bulbs closer together are no fewer, and a
// greater effort finds no fewer.
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "packing/packing.hpp"

using namespace bulbwright;

namespace {

struct Steps {
  Section first;
  double length, width, gap;  ///< what is added a step, mm
  double first_gap = 25.0;
};

std::size_t count(const Section& section, double gap, Effort effort) {
  const PackKind kind{40_mm, 1.0, 0};
  return pack_most(section, {&kind, 1}, Millimetres{gap}, 10_mm, effort).bulbs.size();
}

}  // namespace

TEST_CASE("one millimetre more of pot or 0.2 mm less of gap never loses a bulb", "[packing][law]") {
  const std::vector<Steps> all{
      {{Shape::round, 400_mm, 400_mm, {}}, 1.0, 1.0, 0.0},
      {{Shape::rectangle, 600_mm, 200_mm, {}}, 1.0, 0.0, 0.0},
      {{Shape::rectangle, 330_mm, 325_mm, 30_mm}, 0.0, 1.0, 0.0},
      {{Shape::oval, 500_mm, 300_mm, {}}, 1.0, 0.0, 0.0},
      {{Shape::half_round, 500_mm, 250_mm, {}}, 1.0, 0.0, 0.0},
      {{Shape::rectangle, 500_mm, 250_mm, {}}, 0.0, 0.0, -0.2, 30.0},
      {{Shape::oval, 450_mm, 260_mm, {}}, 0.0, 0.0, -0.2, 30.0},
  };
  for (const Steps& steps : all) {
    CAPTURE(word_of(steps.first.shape), steps.length, steps.width, steps.gap);
    std::size_t before = 0;
    for (int k = 0; k < 25; ++k) {
      Section section = steps.first;
      section.length = section.length + Millimetres{k * steps.length};
      section.width = section.width + Millimetres{k * steps.width};
      const std::size_t now = count(section, steps.first_gap + k * steps.gap, Effort::quick);
      CHECK(now >= before);
      before = now;
    }
  }
}

TEST_CASE("a greater effort never finds fewer bulbs of one kind", "[packing][law]") {
  for (const Shape shape : {Shape::rectangle, Shape::oval, Shape::half_round}) {
    for (double length = 300.0; length < 620.0; length += 53.0) {
      const Section section{shape, Millimetres{length}, 220_mm, {}};
      CAPTURE(word_of(shape), length);
      CHECK(count(section, 25.0, Effort::normal) >= count(section, 25.0, Effort::quick));
    }
  }
}

TEST_CASE("a wider pot or a greater effort holds no fewer bulbs of a mixture", "[packing][law]") {
  const std::vector<PackKind> kinds{{50_mm, 1.0, 0}, {30_mm, 1.0, 0}};
  for (const Arrange arrange : {Arrange::mixed, Arrange::drift}) {
    for (const Shape shape : {Shape::round, Shape::rectangle}) {
      std::size_t before = 0;
      for (double length = 400.0; length < 416.0; length += 1.0) {
        const Section section{
            shape, Millimetres{length}, shape == Shape::round ? Millimetres{length} : 220_mm, {}};
        CAPTURE(word_of(arrange), word_of(shape), length);
        const auto count = [&](Effort effort) {
          return pack_most(section, kinds, 15_mm, 10_mm, effort, arrange).bulbs.size();
        };
        const std::size_t now = count(Effort::quick);
        CHECK(now >= before);
        before = now;
        if (length == 405.0) CHECK(count(Effort::normal) >= now);
      }
    }
  }
}
