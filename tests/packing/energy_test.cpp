#include "packing/energy.hpp"

#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>

#include "packing/random.hpp"
#include "packing/seeds.hpp"

using namespace bulbwright;
using packing::Energy;
using packing::Outline;

namespace {

struct Slope {
  double energy = 0.0;
  std::vector<double> gradient;  ///< x0 y0 x1 y1 ...
};

/// The energy as its comment defines it, over every pair; the walls' share is the outline's, which
/// its own test covers.
Slope by_definition(const Outline& outline, const packing::Discs& discs, double extra,
                    const std::vector<double>& at) {
  const std::size_t n = discs.size();
  const double reach_max = *std::max_element(discs.reach.begin(), discs.reach.end());
  Slope s{0.0, std::vector<double>(2 * n, 0.0)};
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t j = i + 1; j < n; ++j) {
      const double dx = at[2 * i] - at[2 * j], dy = at[2 * i + 1] - at[2 * j + 1];
      const double want = discs.reach[i] + discs.reach[j] + extra;
      const double over = (want * want - dx * dx - dy * dy) / (4.0 * reach_max);
      if (over <= 0.0) continue;
      s.energy += over * over;
      const double pull = over / reach_max;
      s.gradient[2 * i] -= pull * dx;
      s.gradient[2 * i + 1] -= pull * dy;
      s.gradient[2 * j] += pull * dx;
      s.gradient[2 * j + 1] += pull * dy;
    }
    s.energy += outline.push({at[2 * i], at[2 * i + 1]}, discs.margin[i] + extra, s.gradient[2 * i],
                             s.gradient[2 * i + 1]);
  }
  return s;
}

template <class Real>
void check(const Outline& outline, const packing::Discs& discs, double tolerance) {
  const std::size_t n = discs.size();
  packing::Random random{n};
  Energy energy{outline, discs};
  const auto points = packing::scattered_seed(outline, n, discs.margin.front() / 2.0, random);
  std::vector<Real> at(2 * n + 2, static_cast<Real>(Energy::far_away)), gradient(2 * n + 2);
  for (std::size_t i = 0; i < n; ++i) {
    at[2 * i] = static_cast<Real>(points[i].x);
    at[2 * i + 1] = static_cast<Real>(points[i].y);
  }
  // Small moves keep the list of near pairs, large ones have it made anew.
  for (const double push : {0.0, 0.5, 2.0, 2.0, 2.0, 2.0, 2.0, 30.0, 1.0, 300.0}) {
    for (std::size_t k = 0; k < 2 * n; ++k) at[k] += static_cast<Real>(random.between(-push, push));
    const double extra = random.between(0.0, 2.0);
    energy.set_extra(extra);
    const double found = energy.of_centres(at.data(), gradient.data());
    const Slope right = by_definition(outline, discs, extra, {at.begin(), at.end()});
    double longest = 0.0;
    for (const double g : right.gradient) longest = std::max(longest, std::fabs(g));
    CAPTURE(n, push, found, right.energy, longest);
    REQUIRE(std::fabs(found - right.energy) <= tolerance * (1.0 + right.energy));
    for (std::size_t k = 0; k < 2 * n; ++k) {
      CAPTURE(k);
      REQUIRE(std::fabs(static_cast<double>(gradient[k]) - right.gradient[k]) <=
              tolerance * (1.0 + longest));
    }
  }
}

}  // namespace

TEST_CASE("soft-disc energy and gradient are those of its definition, in both precisions") {
  const Outline round{{Shape::round, Millimetres{380.0}, Millimetres{380.0}, {}}};
  const Outline trough{
      {Shape::rectangle, Millimetres{600.0}, Millimetres{200.0}, Millimetres{30.0}}};
  const Outline oval{{Shape::oval, Millimetres{500.0}, Millimetres{300.0}, {}}};
  for (const Outline& outline : {round, trough, oval}) {
    for (const std::size_t n : {2UL, 3UL, 5UL, 12UL, 37UL, 149UL, 150UL, 151UL, 260UL}) {
      packing::Discs same = packing::equal_discs(n, 60.0, 30.0);
      check<double>(outline, same, 1e-6);
      check<float>(outline, same, 2e-5);
      packing::Discs mixed = same;
      for (std::size_t i = 0; i < n; i += 3) {
        mixed.reach[i] = 12.0;
        mixed.margin[i] = 18.0;
      }
      check<double>(outline, mixed, 1e-6);
      check<float>(outline, mixed, 2e-5);
    }
  }
}
