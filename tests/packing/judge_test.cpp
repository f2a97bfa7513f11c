// An independent judge of printed layouts: Boost.Geometry, a general-purpose geometry library,
// decides whether bulbs overlap and whether they stay inside, on random outlines and bulbs.
#include <cmath>
#include <numbers>
#include <vector>

#include <boost/geometry.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <boost/geometry/geometries/polygon.hpp>
#include <catch2/catch.hpp>

#include "packing/packing.hpp"

using namespace bulbwright;

namespace {

namespace bg = boost::geometry;
using Point = bg::model::d2::point_xy<double>;
using Polygon = bg::model::polygon<Point>;

/// The outline as a fine polygon drawn inside it, so that inside the polygon is inside the outline;
/// `sag` is how far at most the polygon lies within the curve.
Polygon polygon_of(const Section& section, double& sag) {
  constexpr int steps = 4000;
  Polygon polygon;
  const double a = section.length.value() / 2.0, pi = std::numbers::pi;
  const bool half = section.shape == Shape::half_round;
  const double b = half ? section.width.value() : section.width.value() / 2.0;
  sag = std::max(a, b) * (1.0 - std::cos(pi / steps)) + 1e-9;
  if (section.shape == Shape::rectangle) {
    const double r = section.corner.value();
    for (int corner = 0; corner < 4; ++corner) {
      const double cx = (corner == 0 || corner == 3 ? 1 : -1) * (a - r),
                   cy = (corner < 2 ? 1 : -1) * (b - r);
      for (int i = 0; i <= steps / 4; ++i) {
        const double t = pi / 2.0 * (corner + 4.0 * i / steps);
        bg::append(polygon, Point{cx + r * std::cos(t), cy + r * std::sin(t)});
      }
    }
  } else {
    const double turn = half ? pi : 2.0 * pi;
    for (int i = 0; i <= steps; ++i)
      bg::append(polygon, Point{a * std::cos(turn * i / steps), b * std::sin(turn * i / steps)});
  }
  bg::correct(polygon);
  return polygon;
}

class Draw {
 public:
  double between(double low, double high) {
    state_ = state_ * 6364136223846793005ULL + 1442695040888963407ULL;
    return low + (high - low) * static_cast<double>(state_ >> 11U) / 9007199254740992.0;
  }

 private:
  unsigned long long state_ = 20260101;
};

Section random_section(Draw& draw, int round) {
  const auto shape = static_cast<Shape>(round % 4);
  const double length = draw.between(180.0, 520.0);
  double width = draw.between(0.4, 1.0) * length;
  double corner = 0.0;
  if (shape == Shape::round) width = length;
  if (shape == Shape::half_round) width = draw.between(0.35, 0.6) * length;
  if (shape == Shape::rectangle) corner = draw.between(0.0, 0.4) * width;
  return {shape, Millimetres{length}, Millimetres{width}, Millimetres{corner}};
}

void judge(const Section& section, std::span<const PackKind> kinds, const Packing& packing,
           Millimetres gap, Millimetres wall) {
  constexpr double dust = 1e-6;
  double sag = 0.0;
  const Polygon outline = polygon_of(section, sag);
  bg::model::linestring<Point> ring{outline.outer().begin(), outline.outer().end()};
  for (std::size_t i = 0; i < packing.bulbs.size(); ++i) {
    const PlacedBulb& bulb = packing.bulbs[i];
    const Point centre{bulb.x_mm, bulb.y_mm};
    const double radius = kinds[bulb.kind].diameter.value() / 2.0;
    REQUIRE(bg::within(centre, outline));
    REQUIRE(bg::distance(centre, ring) + sag + dust >= radius + wall.value());
    for (std::size_t k = i + 1; k < packing.bulbs.size(); ++k) {
      const PlacedBulb& other = packing.bulbs[k];
      const double apart = bg::distance(centre, Point{other.x_mm, other.y_mm});
      REQUIRE(apart + dust >= radius + kinds[other.kind].diameter.value() / 2.0 + gap.value());
    }
  }
  CHECK(packing.bulbs.size() <= packing.upper_bound);
}

}  // namespace

TEST_CASE("Boost.Geometry finds no overlap and no bulb outside in random layouts",
          "[packing][oracle]") {
  Draw draw;
  for (int round = 0; round < 40; ++round) {
    const Section section = random_section(draw, round);
    const Millimetres gap{draw.between(0.0, 30.0)}, wall{draw.between(0.0, 12.0)};
    std::vector<PackKind> kinds{{Millimetres{draw.between(18.0, 55.0)}, 1.0, 0}};
    if (round % 3 == 2) kinds.push_back({Millimetres{draw.between(15.0, 40.0)}, 2.0, 0});
    CAPTURE(round, word_of(section.shape), section.length.value(), section.width.value());
    const Packing most = pack_most(section, kinds, gap, wall, Effort::quick);
    judge(section, kinds, most, gap, wall);
    if (most.bulbs.size() < kinds.size()) continue;
    for (PackKind& kind : kinds)
      kind.count = static_cast<int>(most.bulbs.size() / (2 * kinds.size())) + 1;
    const Packing own = place_count(section, kinds, Millimetres{3.0}, wall, Effort::quick);
    judge(section, kinds, own, own.gap, wall);
  }
}
