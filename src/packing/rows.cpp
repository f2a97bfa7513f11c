#include "packing/rows.hpp"

#include <algorithm>
#include <cmath>

#include "packing/certificate.hpp"

namespace bulbwright::packing {
namespace {

/// The least whole root whose square is `square` or more.
std::int64_t root_upwards(std::int64_t square) {
  auto root =
      static_cast<std::int64_t>(std::sqrt(static_cast<double>(std::max<std::int64_t>(square, 0))));
  while (root * root < square) ++root;
  while (root > 0 && (root - 1) * (root - 1) >= square) --root;
  return root;
}

/// Half the room along an axis, whole units.
std::int64_t half_room(double half, double margin) {
  return static_cast<std::int64_t>(std::floor(units_per_mm * (half - margin) + allowed_units));
}

/// Rows along x (or y) where `run` and `rise` are half the room along and across the rows. Rows are
/// equally far apart, neighbours shifted by u, places in a row 2u apart; rows far enough apart
/// stand in line, places as near as can be.
std::vector<GridPoint> rows_of(std::int64_t run, std::int64_t rise, std::int64_t rows,
                               std::int64_t square) {
  const std::int64_t v = rows > 1 ? 2 * rise / (rows - 1) : 0;
  if (rows > 2 && 4 * v * v < square) return {};  // the next row but one would be too near
  const std::int64_t alone = root_upwards(square);
  const std::int64_t u = std::max((alone + 1) / 2, root_upwards(square - v * v));
  const bool in_line = rows == 1 || v * v >= square;
  const std::int64_t step = in_line ? alone : 2 * u;
  std::vector<GridPoint> points;
  for (std::int64_t row = 0; row < rows; ++row) {
    const std::int64_t across = rows > 1 ? row * v - rise : 0;
    for (std::int64_t at = in_line || row % 2 == 0 ? -run : u - run; at <= run; at += step) {
      points.push_back({at, across});
    }
  }
  return points;
}

}  // namespace

std::vector<Point> printable_rows(const Outline& outline, double spacing, double margin) {
  if (outline.shape() != Shape::rectangle || margin > outline.inradius() + 1e-9) return {};
  const std::int64_t square = least_square(spacing);
  std::vector<Point> best;
  for (const bool along_length : {true, false}) {
    std::int64_t run = half_room(outline.half_length(), margin);
    std::int64_t rise = half_room(outline.top(), margin);
    if (!along_length) std::swap(run, rise);
    const auto most_rows = static_cast<std::int64_t>(2.0 * static_cast<double>(rise) /
                                                     (0.866 * units_per_mm * spacing)) +
                           2;
    for (std::int64_t rows = 1; rows <= most_rows; ++rows) {
      std::vector<Point> points;
      for (const GridPoint g : rows_of(run, rise, rows, square)) {
        const Point at = to_mm(g);
        const Point p = along_length ? at : Point{at.y, at.x};
        if (outline.is_deep(p, margin - 1e-9)) points.push_back(p);
      }
      if (points.size() > best.size()) best = std::move(points);
    }
  }
  return best;
}

}  // namespace bulbwright::packing
