#include "packing/lattice.hpp"

#include <algorithm>
#include <cmath>

#include "packing/random.hpp"

namespace bulbwright::packing {
namespace {

constexpr double half_sqrt3 = 0.86602540378443864676;

/// Staggered rows parallel to a side, the first and last on the walls: spacing along a row and
/// between rows stretched so that both diagonals still hold.
std::vector<Point> stretched_rows(const Outline& outline, double spacing, double margin,
                                  bool along_length) {
  const double length = 2.0 * (outline.half_length() - margin);
  const double width = 2.0 * (outline.top() - margin);
  const double run = std::max(0.0, along_length ? length : width);
  const double rise = std::max(0.0, along_length ? width : length);
  std::vector<Point> best;
  const int most_rows = static_cast<int>(rise / (half_sqrt3 * spacing) + 1e-9) + 2;
  for (int rows = 1; rows <= most_rows; ++rows) {
    const double v = rows > 1 ? rise / (rows - 1) : 0.0;
    if (rows > 2 && 2.0 * v < spacing) break;  // the next row but one would be too near
    const double u =
        std::max(spacing / 2.0, v < spacing ? std::sqrt(spacing * spacing - v * v) : 0.0);
    const double start_x = -run / 2.0, start_y = rows > 1 ? -rise / 2.0 : 0.0;
    std::vector<Point> points;
    for (int row = 0; row < rows; ++row) {
      const bool in_line = rows == 1 || v >= spacing;
      const double shift = in_line || row % 2 == 0 ? 0.0 : u;
      const double step = in_line ? spacing : 2.0 * u;
      for (int i = 0; shift + i * step <= run + 1e-9; ++i) {
        const double along = start_x + shift + i * step, across = start_y + row * v;
        const Point p = along_length ? Point{along, across} : Point{across, along};
        if (outline.depth(p) >= margin - 1e-9) points.push_back(p);
      }
    }
    if (points.size() > best.size()) best = std::move(points);
  }
  return best;
}

}  // namespace

Lattice hexagonal(double spacing, double dx, double dy, Point origin) {
  const double s = spacing, h = half_sqrt3 * spacing;
  return {origin, {s * dx, s * dy}, {s / 2.0 * dx - h * dy, s / 2.0 * dy + h * dx}};
}

std::vector<Point> points_within(const Lattice& lattice, const Outline& outline, double margin) {
  const double det = lattice.u.x * lattice.v.y - lattice.u.y * lattice.v.x;
  const double a = outline.half_length() - margin;
  const double y0 = outline.bottom() + margin, y1 = outline.top() - margin;
  double i0 = 1e18, i1 = -1e18, j0 = 1e18, j1 = -1e18;
  for (const double x : {-a, a}) {
    for (const double y : {y0, y1}) {
      const double rx = x - lattice.origin.x, ry = y - lattice.origin.y;
      const double i = (rx * lattice.v.y - ry * lattice.v.x) / det;
      const double j = (lattice.u.x * ry - lattice.u.y * rx) / det;
      i0 = std::min(i0, i);
      i1 = std::max(i1, i);
      j0 = std::min(j0, j);
      j1 = std::max(j1, j);
    }
  }
  std::vector<Point> points;
  for (double j = std::floor(j0); j <= std::ceil(j1); ++j) {
    for (double i = std::floor(i0); i <= std::ceil(i1); ++i) {
      const Point p{lattice.origin.x + i * lattice.u.x + j * lattice.v.x,
                    lattice.origin.y + i * lattice.u.y + j * lattice.v.y};
      if (std::fabs(p.x) > a + 1e-9 || p.y < y0 - 1e-9 || p.y > y1 + 1e-9) continue;
      if (outline.is_deep(p, margin - 1e-9)) {
        points.push_back(p);
      }
    }
  }
  return points;
}

std::vector<Point> best_lattice(const Outline& outline, double spacing, double margin) {
  constexpr int turns = 12, offsets = 8;
  std::vector<Point> best;
  if (margin > outline.inradius() + 1e-9) return best;
  if (outline.shape() == Shape::rectangle) {
    best = stretched_rows(outline, spacing, margin, true);
    std::vector<Point> other = stretched_rows(outline, spacing, margin, false);
    if (other.size() > best.size()) best = std::move(other);
  }
  // A place that stays where it is in larger outlines: seen from there the larger one reaches as
  // far in every direction, or farther, and so never holds fewer points.
  const Point anchor{0.0, outline.shape() == Shape::half_round ? margin : 0.0};
  // A turn by 60 degrees is the lattice again, and every outline is its own mirror image, so turns
  // from 0 to 30 degrees are enough: those two (rows along either axis) first. All but the
  // half-round are also their own half turn, so that opposite offsets are alike.
  const int steps = outline.shape() == Shape::round ? 1 : turns / 2 + 1;
  for (int t = 0; t < steps; ++t) {
    const Direction d = direction((t == 1 ? steps - 1 : std::max(0, t - 1)) / (6.0 * turns));
    const Lattice base = hexagonal(spacing, d.x, d.y, anchor);
    for (int p = 0; p < offsets; ++p) {
      for (int q = 0; q < offsets; ++q) {
        const int opposite_p = (offsets - p) % offsets, opposite_q = (offsets - q) % offsets;
        if (outline.shape() != Shape::half_round &&
            (p > opposite_p || (p == opposite_p && q > opposite_q))) {
          continue;
        }
        Lattice shifted = base;
        const double fp = static_cast<double>(p) / offsets, fq = static_cast<double>(q) / offsets;
        shifted.origin.x += fp * base.u.x + fq * base.v.x;
        shifted.origin.y += fp * base.u.y + fq * base.v.y;
        std::vector<Point> points = points_within(shifted, outline, margin);
        if (points.size() > best.size()) best = std::move(points);
      }
    }
  }
  return best;
}

}  // namespace bulbwright::packing
