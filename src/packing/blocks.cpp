#include "packing/blocks.hpp"

#include <algorithm>
#include <cmath>

#include "packing/lattice.hpp"

namespace bulbwright::packing {
namespace {

constexpr int offsets_along = 12, offsets_across = 6;

/// Columns of a rectangle, staggered, from one wall to the other: their pitch stretched to the
/// width; `shift` along the length.
std::vector<Point> columns(const Outline& outline, double spacing, double margin, double shift) {
  std::vector<Point> points;
  const double width = 2.0 * (outline.top() - margin), length = outline.half_length() - margin;
  const double pitches = std::floor(2.0 * width / spacing + 1e-9);  // of half a place
  if (pitches < 1.0) return points;
  const double half = width / pitches;
  const double across = std::sqrt(std::max(spacing * spacing - half * half, 0.0));
  double x = -length + shift;
  for (int column = 0; x <= length + length_dust; ++column, x += across) {
    for (double k = column % 2; k <= pitches; k += 2.0) {
      const Point p{x, -width / 2.0 + k * half};
      if (outline.is_deep(p, margin - length_dust)) points.push_back(p);
    }
    if (!(across > 0.0)) break;
  }
  return points;
}

}  // namespace

Blocks::Blocks(const Outline& outline, std::span<const PackKind> kinds, double gap, double wall)
    : gap_{gap} {
  for (const PackKind& kind : kinds) {
    const double d = kind.diameter.value(), spacing = d + gap, margin = wall + d / 2.0;
    diameter_.push_back(d);
    std::vector<std::vector<Point>> all;
    if (margin < outline.inradius()) {
      const double deepest = outline.deepest().y;
      for (int i = 0; i < offsets_along; ++i) {
        const double share = static_cast<double>(i) / offsets_along;
        if (outline.shape() == Shape::rectangle) {
          all.push_back(columns(outline, spacing, margin, share * spacing));
        }
        for (int j = 0; j < offsets_across; ++j) {
          const double along = share * spacing, across = spacing * j / offsets_across;
          for (const bool upright : {false, true}) {
            all.push_back(points_within(hexagonal(spacing, upright ? 0.0 : 1.0, upright ? 1.0 : 0.0,
                                                  {along, deepest + across}),
                                        outline, margin));
          }
        }
      }
    }
    for (auto& points : all) {
      std::sort(points.begin(), points.end(),
                [](Point a, Point b) { return a.x != b.x ? a.x < b.x : a.y < b.y; });
    }
    lattices_.push_back(std::move(all));
  }
}

std::optional<std::vector<Point>> Blocks::places(const std::vector<std::size_t>& counts) const {
  std::vector<Point> taken;
  std::vector<double> reach;  // a diameter's half and the gap
  for (std::size_t k = 0; k < counts.size(); ++k) {
    if (counts[k] == 0) continue;
    std::vector<Point> best;
    const double own = diameter_[k] / 2.0;
    double before = -1e300;
    for (const Point p : taken) before = std::max(before, p.x);
    const double from = before - own - gap_;  // the band of the kind before ends here
    std::vector<std::size_t> near;
    for (std::size_t i = 0; i < taken.size(); ++i) {
      if (taken[i].x > from - own - reach[i]) near.push_back(i);
    }
    for (const auto& lattice : lattices_[k]) {
      std::vector<Point> block;
      for (const Point p : lattice) {
        if (!best.empty() && p.x >= best.back().x) break;
        if (p.x < from) continue;
        const bool free = std::none_of(near.begin(), near.end(), [&](std::size_t i) {
          const double dx = p.x - taken[i].x, dy = p.y - taken[i].y, want = own + reach[i];
          return dx * dx + dy * dy < want * want;
        });
        if (!free) continue;
        block.push_back(p);
        if (block.size() == counts[k]) break;
      }
      if (block.size() == counts[k]) best = std::move(block);
    }
    if (best.empty()) return std::nullopt;
    for (const Point p : best) {
      taken.push_back(p);
      reach.push_back(own + gap_);
    }
  }
  return taken;
}

}  // namespace bulbwright::packing
