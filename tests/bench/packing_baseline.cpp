#include "packing_baseline.hpp"

#include <algorithm>
#include <cmath>

#include "packing/answer.hpp"
#include "packing/bounds.hpp"
#include "packing/certificate.hpp"
#include "packing/kind_layout.hpp"
#include "packing/lattice.hpp"
#include "packing/layout_search.hpp"
#include "packing/random.hpp"
#include "packing/seeds.hpp"

namespace bulbwright::packing {
namespace {

std::size_t fullest(const Lattice& base, const Outline& outline, double margin, int offsets) {
  std::size_t most = 0;
  for (int p = 0; p < offsets; ++p) {
    for (int q = 0; q < offsets; ++q) {
      Lattice shifted = base;
      const double fp = static_cast<double>(p) / offsets, fq = static_cast<double>(q) / offsets;
      shifted.origin.x += fp * base.u.x + fq * base.v.x;
      shifted.origin.y += fp * base.u.y + fq * base.v.y;
      most = std::max(most, points_within(shifted, outline, margin).size());
    }
  }
  return most;
}

}  // namespace

std::size_t count_by_area(const Section& section, double spacing) {
  return static_cast<std::size_t>(area_mm2(section) / (spacing * spacing));
}

std::size_t count_by_square_grid(const Outline& outline, double spacing, double margin,
                                 int offsets) {
  const Lattice grid{outline.deepest(), {spacing, 0.0}, {0.0, spacing}};
  return fullest(grid, outline, margin, offsets);
}

std::size_t count_by_hexagonal_lattice(const Outline& outline, double spacing, double margin,
                                       int turns, int offsets) {
  std::size_t most = 0;
  for (int t = 0; t < turns; ++t) {
    const Direction d = direction(static_cast<double>(t) / (6.0 * turns));
    most = std::max(
        most, fullest(hexagonal(spacing, d.x, d.y, outline.deepest()), outline, margin, offsets));
  }
  return most;
}

std::size_t count_by_rings(const Outline& outline, double spacing, double margin) {
  constexpr double pi = 3.14159265358979323846;
  std::size_t count = 0;
  double radius = outline.inradius() - margin;
  for (; radius >= spacing / 2.0; radius -= spacing) {
    // Chord spacing on a ring of this radius: 2 r sin(pi / n) >= spacing.
    count += static_cast<std::size_t>(pi / std::asin(spacing / (2.0 * radius)) + 1e-9);
  }
  // What is left in the middle takes one bulb where the last ring is far enough.
  return radius >= -1e-9 ? count + 1 : count;
}

std::size_t count_by_greedy_fill(const Outline& outline, std::span<const PackKind> kinds,
                                 double gap, double wall) {
  const double a = outline.half_length();
  std::vector<Point> placed;
  std::vector<double> radius;
  for (std::size_t n = 1; n <= 5000; ++n) {
    const auto before = apportion(n - 1, kinds), after = apportion(n, kinds);
    std::size_t kind = 0;
    while (kind + 1 < kinds.size() && after[kind] <= before[kind]) ++kind;
    const double r = kinds[kind].diameter.value() / 2.0;
    bool found = false;
    for (double y = outline.bottom() + wall + r; !found && y <= outline.top() - wall - r;
         y += 2.0) {
      for (double x = -a + wall + r; !found && x <= a - wall - r; x += 2.0) {
        if (outline.depth({x, y}) < wall + r) continue;
        bool free = true;
        for (std::size_t i = 0; free && i < placed.size(); ++i) {
          const double dx = x - placed[i].x, dy = y - placed[i].y, want = r + radius[i] + gap;
          free = dx * dx + dy * dy >= want * want;
        }
        if (!free) continue;
        placed.push_back({x, y});
        radius.push_back(r);
        found = true;
      }
    }
    if (!found) break;
  }
  return placed.size();
}

}  // namespace bulbwright::packing
