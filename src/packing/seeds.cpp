#include "packing/seeds.hpp"

#include <algorithm>
#include <cmath>

#include "packing/lattice.hpp"

namespace bulbwright::packing {

Point random_point(const Outline& outline, double margin, Random& random) {
  const double a = std::max(0.0, outline.half_length() - margin);
  const double y0 = outline.bottom() + margin, y1 = std::max(y0, outline.top() - margin);
  Point p = outline.deepest();
  for (int i = 0; i < 20; ++i) {
    p = {random.between(-a, a), random.between(y0, y1)};
    if (outline.is_deep(p, margin)) return p;
  }
  return p;
}

std::vector<Point> scattered_seed(const Outline& outline, std::size_t n, double margin,
                                  Random& random) {
  std::vector<Point> points(n);
  for (Point& p : points) p = random_point(outline, margin, random);
  return points;
}

std::vector<Point> lattice_seed(const Outline& outline, std::size_t n, double spacing,
                                double margin, Random& random) {
  const Direction d = direction(random.unit() / 6.0);
  const double fx = random.unit(), fy = random.unit();
  double high = 1.15 * spacing;
  std::vector<Point> points;
  // Shrink until n fit; then drop the shallowest of those too many.
  for (int i = 0; i < 40 && points.size() < n; ++i, high *= 0.985) {
    Lattice lattice = hexagonal(high, d.x, d.y, outline.deepest());
    lattice.origin.x += fx * lattice.u.x + fy * lattice.v.x;
    lattice.origin.y += fx * lattice.u.y + fy * lattice.v.y;
    points = points_within(lattice, outline, margin - 0.15 * spacing);
  }
  if (points.size() > n) {
    std::stable_sort(points.begin(), points.end(),
                     [&](Point p, Point q) { return outline.depth(p) > outline.depth(q); });
    points.resize(n);
  }
  while (points.size() < n) points.push_back(random_point(outline, margin, random));
  return points;
}

std::vector<Point> ring_seed(const Outline& outline, std::size_t n, double spacing, double margin,
                             Random& random) {
  const Point centre = outline.deepest();
  const double reach = outline.inradius() - margin;
  std::vector<Point> points;
  double inset = 0.0;
  while (points.size() < n) {
    const double f = reach > 0.0 ? 1.0 - inset / reach : 0.0;
    if (f <= 0.15 * spacing / std::max(spacing, reach) || reach <= 0.0) {
      points.push_back(centre);
      break;
    }
    constexpr double pi = 3.14159265358979323846;
    const double wx = f * std::max(0.0, outline.half_length() - margin);
    const double wy = f * (outline.top() - margin - centre.y);
    const double holds = pi * (wx + wy) / spacing;
    const auto count = static_cast<std::size_t>(std::max(1.0, holds + random.between(-0.9, 0.6)));
    const double phase = random.unit();
    for (std::size_t i = 0; i < count && points.size() < n; ++i) {
      const Direction d = even_direction(i, count);
      const Direction t = direction(phase);
      points.push_back(
          {centre.x + wx * (d.x * t.x - d.y * t.y), centre.y + wy * (d.x * t.y + d.y * t.x)});
    }
    inset += spacing * random.between(0.84, 1.0);
  }
  while (points.size() < n) points.push_back(random_point(outline, margin, random));
  return points;
}

std::vector<Point> symmetric_seed(const Outline& outline, std::size_t n, double margin,
                                  Random& random) {
  std::vector<Point> points;
  const Point centre = outline.deepest();
  const bool mirror = outline.shape() == Shape::half_round;
  std::size_t folds = 2;
  if (outline.shape() == Shape::round) {
    for (int i = 0; i < 8; ++i) {
      folds = 2 + random.below(5);
      if (n % folds <= 1) break;
      folds = 2;
    }
  }
  while (points.size() + folds <= n) {
    const Point p = random_point(outline, margin, random);
    if (mirror) {
      points.push_back(p);
      points.push_back({-p.x, p.y});
      continue;
    }
    for (std::size_t k = 0; k < folds; ++k) {
      const Direction d = even_direction(k, folds);
      points.push_back({d.x * p.x - d.y * p.y, d.y * p.x + d.x * p.y});
    }
  }
  while (points.size() < n) {
    const double y0 = outline.bottom() + margin, y1 = outline.top() - margin;
    points.push_back(mirror ? Point{0.0, random.between(y0, std::max(y0, y1))} : centre);
  }
  return points;
}

std::vector<Point> hexagonal_ring_seed(const Outline& outline, std::size_t n, double margin,
                                       Random& random) {
  std::size_t rings = 0;
  while (3 * rings * (rings + 1) + 1 < n) ++rings;
  const Point centre = outline.deepest();
  const double wx = std::max(0.0, outline.half_length() - margin);
  const double wy = std::max(0.0, outline.top() - margin - centre.y);
  std::vector<Point> points{centre};
  for (std::size_t ring = 1; ring <= rings; ++ring) {
    const double f = static_cast<double>(ring) / static_cast<double>(rings);
    const Direction t = direction(random.unit() / 6.0);
    const std::size_t count = 6 * ring;
    const std::size_t skip = random.below(count);
    for (std::size_t i = 0; i < count && points.size() < n; ++i) {
      const Direction d = even_direction((i + skip) % count, count);
      points.push_back({centre.x + f * wx * (d.x * t.x - d.y * t.y),
                        centre.y + f * wy * (d.x * t.y + d.y * t.x)});
    }
  }
  return points;
}

Coordinates to_coordinates(const std::vector<Point>& points) {
  const std::size_t n = points.size();
  Coordinates x(2 * n);
  for (std::size_t i = 0; i < n; ++i) {
    x[i] = points[i].x;
    x[n + i] = points[i].y;
  }
  return x;
}

std::vector<Point> to_points(const Coordinates& x) {
  const std::size_t n = x.size() / 2;
  std::vector<Point> points(n);
  for (std::size_t i = 0; i < n; ++i) points[i] = {x[i], x[n + i]};
  return points;
}

}  // namespace bulbwright::packing
