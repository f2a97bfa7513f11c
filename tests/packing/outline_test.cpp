#include "packing/outline.hpp"

#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>

#include "packing/random.hpp"
#include "packing/rows.hpp"
#include "packing/seeds.hpp"

using namespace bulbwright;
using packing::Outline;
using packing::Point;

namespace {

/// Distance from (x, y) to an ellipse by golden section over its angle, in the first quadrant, none
/// of the packer's code. Negative outside.
double ellipse_distance(double a, double b, double x, double y) {
  x = std::fabs(x);
  y = std::fabs(y);
  const auto distance = [&](double t) {
    return std::hypot(a * std::cos(t) - x, b * std::sin(t) - y);
  };
  const int steps = 2000;
  const double width = M_PI / 2.0 / steps;
  double nearest = 0.0;
  for (int k = 1; k <= steps; ++k) {
    if (distance(k * width) < distance(nearest)) nearest = k * width;
  }
  double low = std::max(0.0, nearest - width), high = std::min(M_PI / 2.0, nearest + width);
  for (int k = 0; k < 60; ++k) {
    const double l = low + 0.382 * (high - low), h = low + 0.618 * (high - low);
    (distance(l) < distance(h) ? high : low) = distance(l) < distance(h) ? h : l;
  }
  const double d = distance((low + high) / 2.0);
  return x * x / (a * a) + y * y / (b * b) > 1.0 ? -d : d;
}

Point drawn(packing::Random& random, double a, double b, int k) {
  const packing::Direction d = packing::direction(random.unit());
  const double f = 1.1 * random.unit();
  Point p{a * f * d.x, b * f * d.y};
  if (k % 10 == 0) p.y = (k % 20 == 0 ? 1e-6 : 1e-12) * b;  // about the long axis
  if (k % 13 == 0) p.x = 0.0;
  return p;
}

}  // namespace

TEST_CASE("depth in an oval is the distance to its rim", "[packing][oracle]") {
  packing::Random random{1};
  for (int c = 0; c < 40; ++c) {
    const double a = random.between(50.0, 2500.0), b = a * random.between(0.05, 1.3);
    const Outline oval{{Shape::oval, Millimetres{2.0 * a}, Millimetres{2.0 * b}, {}}};
    for (int k = 0; k < 100; ++k) {
      const Point p = drawn(random, a, b, k);
      CAPTURE(a, b, p.x, p.y);
      CHECK(std::fabs(oval.depth(p) - ellipse_distance(a, b, p.x, p.y)) < 1e-7);
    }
  }
}

TEST_CASE("a cheap proof of depth is never wrong", "[packing][law]") {
  packing::Random random{2};
  int proven = 0, deep = 0;
  for (const Shape shape : {Shape::round, Shape::oval, Shape::half_round, Shape::rectangle}) {
    for (int c = 0; c < 100; ++c) {
      const double a = random.between(50.0, 800.0);
      const double b = shape == Shape::round ? a : a * random.between(0.1, 1.2);
      const double corner = c % 2 == 0 || shape != Shape::rectangle ? 0.0 : 0.8 * std::min(a, b);
      const double width = shape == Shape::half_round ? b : 2.0 * b;
      const Outline outline{{shape, Millimetres{2.0 * a}, Millimetres{width}, Millimetres{corner}}};
      const double m = outline.inradius() * random.between(-0.1, 1.1);
      for (int k = 0; k < 200; ++k) {
        const Point p = drawn(random, a, b, k);
        CAPTURE(word_of(shape), a, b, corner, m, p.x, p.y);
        const double depth = outline.depth(p);
        deep += depth >= m ? 1 : 0;
        if (outline.clearly_deeper(p, m)) {
          ++proven;
          CHECK(depth >= m - 1e-9);
        }
        if (std::fabs(depth - m) > 1e-9) CHECK(outline.is_deep(p, m) == (depth > m));
      }
    }
  }
  CHECK(proven > deep * 9 / 10);  // else it saves no work
}

TEST_CASE("rows for a trough lie on hundredths, apart and off the walls", "[packing][law]") {
  packing::Random random{3};
  std::size_t most = 0;
  for (int c = 0; c < 300; ++c) {
    const double length = std::round(random.between(60.0, 900.0) * 100.0) / 100.0;
    const double width = std::round(random.between(60.0, 400.0) * 100.0) / 100.0;
    const double spacing = random.between(15.0, 90.0), margin = random.between(0.0, 30.0);
    const double corner = c % 3 == 0 ? 0.3 * std::min(length, width) : 0.0;
    const Outline outline{
        {Shape::rectangle, Millimetres{length}, Millimetres{width}, Millimetres{corner}}};
    const auto rows = packing::printable_rows(outline, spacing, margin);
    CAPTURE(length, width, spacing, margin, corner, rows.size());
    most = std::max(most, rows.size());
    for (std::size_t i = 0; i < rows.size(); ++i) {
      CHECK(std::fabs(rows[i].x * 100.0 - std::round(rows[i].x * 100.0)) < 1e-8);
      CHECK(std::fabs(rows[i].y * 100.0 - std::round(rows[i].y * 100.0)) < 1e-8);
      CHECK(outline.depth(rows[i]) >= margin - 2e-9);
      for (std::size_t j = 0; j < i; ++j) {
        const double d = std::hypot(rows[i].x - rows[j].x, rows[i].y - rows[j].y);
        CHECK(d >= spacing - 2e-9);
      }
    }
  }
  CHECK(most > 200);
}

TEST_CASE("the push of a wall is nought inside and its gradient is that of its size") {
  const std::vector<Section> sections{
      {Shape::round, Millimetres{300.0}, Millimetres{300.0}, {}},
      {Shape::oval, Millimetres{400.0}, Millimetres{200.0}, {}},
      {Shape::rectangle, Millimetres{400.0}, Millimetres{200.0}, Millimetres{60.0}},
      {Shape::half_round, Millimetres{400.0}, Millimetres{160.0}, {}},
  };
  packing::Random random{7};
  int pushed = 0;
  for (const Section& section : sections) {
    const Outline outline{section};
    for (int k = 0; k < 2000; ++k) {
      const double m = random.between(5.0, 40.0);
      const Point p = packing::random_point(outline, 1.0, random);
      double gx = 1.0, gy = 2.0;  // what is found is added
      const double energy = outline.push(p, m, gx, gy);
      const double depth = outline.depth(p);
      CAPTURE(static_cast<int>(section.shape), p.x, p.y, m, depth, energy);
      REQUIRE((energy > 0.0) == (depth < m));
      if (energy == 0.0) {
        REQUIRE((gx == 1.0 && gy == 2.0));
        continue;
      }
      // Two walls near a corner are two pushes; one wall is its shortfall squared.
      REQUIRE(energy >= (m - depth) * (m - depth) * (1.0 - 1e-9));
      REQUIRE(energy <= 2.0 * (m - depth) * (m - depth) * (1.0 + 1e-9));
      double unused = 0.0;
      const auto at = [&](double x, double y) { return outline.push({x, y}, m, unused, unused); };
      const double h = 1e-4;
      REQUIRE(std::fabs((at(p.x + h, p.y) - at(p.x - h, p.y)) / (2.0 * h) - (gx - 1.0)) < 0.01);
      REQUIRE(std::fabs((at(p.x, p.y + h) - at(p.x, p.y - h)) / (2.0 * h) - (gy - 2.0)) < 0.01);
      ++pushed;
    }
  }
  CHECK(pushed > 1000);
}
