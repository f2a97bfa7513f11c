#include "packing/newton.hpp"

#include <cmath>

#include <catch2/catch.hpp>

#include "packing/random.hpp"

using namespace bulbwright;
using packing::Energy;

namespace {

/// A centre with rings of the given counts about it at these distances, in spacings, each place off
/// by up to 3 % of the spacing.
packing::Coordinates rings(const std::vector<std::pair<int, double>>& counts, double spacing,
                           packing::Random& random) {
  std::vector<double> xs{0.0}, ys{0.0};
  for (const auto& [count, distance] : counts) {
    for (int k = 0; k < count; ++k) {
      const double angle = 2.0 * M_PI * (k + (count == 12 ? 0.5 : 0.0)) / count;
      xs.push_back(distance * spacing * std::cos(angle));
      ys.push_back(distance * spacing * std::sin(angle));
    }
  }
  packing::Coordinates x = xs;
  x.insert(x.end(), ys.begin(), ys.end());
  for (double& v : x) v += random.between(-0.03, 0.03) * spacing;
  return x;
}

}  // namespace

// A layout of n discs, ratio q of container to disc, is let out until its discs touch: points s + e
// apart, s/2 + e from a wall of radius R, so that (R - s/2 - e) / (s + e) = (q - 1) / 2.
// n = 7: q = 3. n = 19: q = 1 + sqrt 2 + sqrt 6, proven by Fodor, "The densest packing of 19
// congruent circles in a circle", Geometriae Dedicata 74, 1999 (from memory).
TEST_CASE("a squeezed layout is let out to the point where its discs touch") {
  const double radius = 1000.0;
  const packing::Outline outline{
      {Shape::round, Millimetres{2.0 * radius}, Millimetres{2.0 * radius}, {}}};
  struct Case {
    std::vector<std::pair<int, double>> counts;
    double ratio;
  };
  const std::vector<Case> cases{
      {{{6, 1.0}}, 3.0},
      {{{6, 1.0}, {12, 1.93185}}, 1.0 + std::sqrt(2.0) + std::sqrt(6.0)},
  };
  packing::Random random{19};
  for (const Case& c : cases) {
    for (const double slack : {1e-3, 1e-5, 0.0, -1e-5, -1e-4}) {
      const double s = 2.0 * radius / (c.ratio * (1.0 + slack));
      const double q = (c.ratio - 1.0) / 2.0;
      const double expected = (radius - s / 2.0 - q * s) / (1.0 + q);
      packing::Coordinates x = rings(c.counts, s, random);
      const packing::Discs discs = packing::equal_discs(x.size() / 2, s, s / 2.0);
      Energy energy{outline, discs};
      energy.set_extra(0.0006 * s + std::max(0.0, expected));
      packing::Relaxer<double> relaxer;
      relaxer.relax(energy, x, {0.0, 0.0, 0.0, 400});
      packing::Tightener tightener;
      double touching = -1e300;
      long work = 0;
      const bool fits = tightener.let_out(energy, x, {1e-9 * s, 1'000'000'000}, touching, work);
      CAPTURE(c.ratio, slack, expected, touching);
      CHECK(work > 0);
      if (slack <= -1e-5) {
        CHECK_FALSE(fits);
        CHECK(std::fabs(touching - expected) <= 1e-7 * s);
      } else {
        REQUIRE(fits);
        CHECK(energy.worst_overlap(x) <= 1e-9 * s);
      }
    }
  }
}
