#include "packing/outline.hpp"

#include <algorithm>
#include <cmath>

namespace bulbwright::packing {
namespace {

double square(double v) {
  return v * v;
}

/// Root t of u^2 + v^2 = 1, u = a x / (t + a^2), v = b y / (t + b^2), above -min(a, b)^2, for
/// x, y >= 0, not both 0. Newton's method on 1 / sqrt(u^2 + v^2), which rises and is concave and
/// nearly straight: from a point left of the root it climbs to it in a few steps and never passes.
/// Source: More & Sorensen, "Computing a trust region step", SIAM J. Sci. Stat. Comput. 4, 1983
/// (the same equation; from memory).
double ellipse_parameter(double a, double b, double x, double y) {
  const double ax = a * x, by = b * y, a2 = a * a, b2 = b * b;
  const double small2 = std::min(a2, b2), large2 = std::max(a2, b2);
  double t = std::max(
      {-a2 + ax, -b2 + by, -large2 + std::sqrt(ax * ax + by * by), -small2 + 1e-12 * small2});
  for (int i = 0; i < 60; ++i) {
    const double p = 1.0 / (t + a2), q = 1.0 / (t + b2);
    const double u = ax * p, v = by * q, u2 = u * u, v2 = v * v, f2 = u2 + v2;
    const double step = (std::sqrt(f2) - 1.0) * f2 / (u2 * p + v2 * q);
    if (!(step > 0.0)) break;
    t += step;
    // The relative error left is of the order of 1e-10, and the depth feels only its square.
    if (step < 1e-5 * (t + small2)) break;
  }
  return t;
}

}  // namespace

Outline::Outline(const Section& section)
    : shape_{section.shape},
      a_{section.length.value() / 2.0},
      b_{section.shape == Shape::half_round ? section.width.value() : section.width.value() / 2.0},
      corner_{section.shape == Shape::rectangle ? section.corner.value() : 0.0} {
  for (std::size_t k = 0; k < touches_.size(); ++k) {
    const double t = std::array{0.0, 1.0, 0.1, 0.4}[k];
    const double w = std::sqrt(a_ * a_ * t + b_ * b_ * (1.0 - t));
    touches_[k] = {t, w, w > 0.0 ? 1.0 / w : 0.0};
  }
  if (shape_ != Shape::half_round) {
    inradius_ = std::min(a_, b_);
    return;
  }
  // The deepest point is on the axis, where the flat side and the curve are equally far.
  double low = 0.0, high = b_;
  for (int i = 0; i < 100; ++i) {
    const double y = (low + high) / 2.0;
    (y < ellipse_depth({0.0, y}) ? low : high) = y;
  }
  inradius_ = low;
  deepest_ = {0.0, low};
}

Outline::Foot Outline::ellipse_foot(Point p) const {
  const double x = std::fabs(p.x), y = std::fabs(p.y);
  double qx = 0.0, qy = 0.0;
  const double a2 = a_ * a_, b2 = b_ * b_;
  if (a_ > b_ && y < 1e-9 * b_ &&
      x * a_ < a2 - b2) {  // on the long axis, between the evolute's cusps
    qx = a2 * x / (a2 - b2);
    qy = b_ * std::sqrt(std::max(0.0, 1.0 - square(qx / a_)));
  } else if (b_ > a_ && x < 1e-9 * a_ && y * b_ < b2 - a2) {
    qy = b2 * y / (b2 - a2);
    qx = a_ * std::sqrt(std::max(0.0, 1.0 - square(qy / b_)));
  } else if (x <= 0.0 && y <= 0.0) {
    qx = a_;  // the centre of a circle: every direction is as good
  } else {
    const double t = ellipse_parameter(a_, b_, x, y);
    qx = a2 * x / (t + a2);
    qy = b2 * y / (t + b2);
    const double norm = std::sqrt(square(qx / a_) + square(qy / b_));  // back onto the curve
    qx /= norm;
    qy /= norm;
  }
  double nx = -qx / a2, ny = -qy / b2;
  const double length = std::sqrt(nx * nx + ny * ny);
  nx /= length;
  ny /= length;
  const double depth = (x - qx) * nx + (y - qy) * ny;
  const double sx = p.x < 0.0 ? -1.0 : 1.0, sy = p.y < 0.0 ? -1.0 : 1.0;
  return {depth, sx * nx, sy * ny, sx * qx, sy * qy};
}

double Outline::ellipse_depth(Point p) const {
  return ellipse_foot(p).depth;
}

double Outline::depth(Point p) const {
  switch (shape_) {
    case Shape::round:
      return a_ - std::sqrt(p.x * p.x + p.y * p.y);
    case Shape::oval:
      return ellipse_depth(p);
    case Shape::half_round:
      return std::min(p.y, ellipse_depth(p));
    case Shape::rectangle: {
      const double ex = std::fabs(p.x) - (a_ - corner_), ey = std::fabs(p.y) - (b_ - corner_);
      if (ex > 0.0 && ey > 0.0) return corner_ - std::sqrt(ex * ex + ey * ey);
      return corner_ - std::max(ex, ey);
    }
  }
  return 0.0;
}

bool Outline::is_deep(Point p, double m) const {
  if (clearly_deeper(p, m)) return true;
  if (shape_ == Shape::oval || shape_ == Shape::half_round) {
    if (shape_ == Shape::half_round && p.y < m) return false;
    // No point is deeper than its distance to a tangent, here one about parallel to the nearest.
    const double nx = p.x / (a_ * a_), ny = p.y / (b_ * b_);
    const double length = std::sqrt(nx * nx + ny * ny), along = nx * p.x + ny * p.y;
    if (std::sqrt(along) - along < (m - 1e-6) * length) return false;
  }
  return depth(p) >= m;
}

double Outline::push_disc(double x, double y, double radius, double& gx, double& gy) const {
  const double d2 = x * x + y * y;
  if (d2 <= radius * radius && radius >= 0.0) return 0.0;
  const double d = std::sqrt(d2);
  if (d <= 0.0) return square(radius);
  const double over = d - radius;
  gx += 2.0 * over * x / d;
  gy += 2.0 * over * y / d;
  return over * over;
}

double Outline::push_ellipse(Point p, double m, double& gx, double& gy) const {
  const Foot foot = ellipse_foot(p);
  double energy = 0.0;
  if (foot.depth < m) {
    const double over = m - foot.depth;
    gx -= 2.0 * over * foot.nx;
    gy -= 2.0 * over * foot.ny;
    energy += over * over;
  }
  // Past the least radius of curvature the inner parallel curve has a corner on the long axis:
  // the mirrored tangent line is a second wall there.
  const bool wide = a_ > b_;
  if (m * std::max(a_, b_) <= square(std::min(a_, b_))) return energy;
  const double qx = wide ? foot.qx : -foot.qx, qy = wide ? -foot.qy : foot.qy;
  const double nx = wide ? foot.nx : -foot.nx, ny = wide ? -foot.ny : foot.ny;
  const double over = m - ((p.x - qx) * nx + (p.y - qy) * ny);
  if (over <= 0.0) return energy;
  gx -= 2.0 * over * nx;
  gy -= 2.0 * over * ny;
  return energy + over * over;
}

double Outline::push_rectangle(Point p, double m, double& gx, double& gy) const {
  const double sx = p.x < 0.0 ? -1.0 : 1.0, sy = p.y < 0.0 ? -1.0 : 1.0;
  const double ex = std::fabs(p.x) - (a_ - corner_), ey = std::fabs(p.y) - (b_ - corner_);
  if (corner_ > m && ex > 0.0 && ey > 0.0) {
    double hx = 0.0, hy = 0.0;
    const double energy = push_disc(ex, ey, corner_ - m, hx, hy);
    gx += sx * hx;
    gy += sy * hy;
    return energy;
  }
  double energy = 0.0;
  const double over_x = ex + m - corner_, over_y = ey + m - corner_;
  if (over_x > 0.0) {
    gx += 2.0 * over_x * sx;
    energy += over_x * over_x;
  }
  if (over_y > 0.0) {
    gy += 2.0 * over_y * sy;
    energy += over_y * over_y;
  }
  return energy;
}

double Outline::push(Point p, double m, double& gx, double& gy) const {
  switch (shape_) {
    case Shape::round:
      return push_disc(p.x, p.y, a_ - m, gx, gy);
    case Shape::rectangle:
      return push_rectangle(p, m, gx, gy);
    case Shape::oval:
      return push_ellipse(p, m, gx, gy);
    case Shape::half_round: {
      double energy = push_ellipse(p, m, gx, gy);
      if (p.y < m) {
        gy -= 2.0 * (m - p.y);
        energy += square(m - p.y);
      }
      return energy;
    }
  }
  return 0.0;
}

double Outline::support(double ux, double uy) const {
  const auto ellipse = [&](double x, double y) {
    return std::sqrt(square(a_ * x) + square(b_ * y));
  };
  switch (shape_) {
    case Shape::round:
      return a_;
    case Shape::oval:
      return ellipse(ux, uy);
    case Shape::half_round:
      return uy >= 0.0 ? ellipse(ux, uy) : a_ * std::fabs(ux);
    case Shape::rectangle:
      return (a_ - corner_) * std::fabs(ux) + (b_ - corner_) * std::fabs(uy) + corner_;
  }
  return 0.0;
}

namespace {

/// A tangent line {p : u . p = limit}, u the outward unit normal.
struct Tangent {
  double ux = 0.0, uy = 0.0, limit = 0.0;
};

/// Tangents of the inner parallel body in `sides` directions, anticlockwise.
std::vector<Tangent> tangents(const Outline& outline, double m, int sides) {
  std::vector<Tangent> lines;
  const int per_quarter = std::max(1, sides / 4);
  for (int k = 0; k < sides; ++k) {
    // Rational points of the unit circle: quarter turns of (1-q^2, 2q)/(1+q^2).
    const double q = static_cast<double>(k % per_quarter) / per_quarter;
    const double c = (1.0 - q * q) / (1.0 + q * q), s = 2.0 * q / (1.0 + q * q);
    const int turn = (k / per_quarter) % 4;
    const double ux = turn == 0 ? c : turn == 1 ? -s : turn == 2 ? -c : s;
    const double uy = turn == 0 ? s : turn == 1 ? c : turn == 2 ? -s : -c;
    // Outward by a little, so that rounding keeps the proof.
    lines.push_back({ux, uy, outline.support(ux, uy) - m + 1e-9});
  }
  return lines;
}

/// The corners where each line meets the next. Empty where a line does not take part, which shows
/// as a side that runs backwards.
std::vector<Point> consecutive_corners(const std::vector<Tangent>& lines) {
  const std::size_t n = lines.size();
  std::vector<Point> corners(n);
  for (std::size_t i = 0; i < n; ++i) {
    const Tangent &p = lines[i], &q = lines[(i + 1) % n];
    const double turn = p.ux * q.uy - p.uy * q.ux;
    if (!(turn > 1e-6)) return {};
    corners[i] = {(p.limit * q.uy - q.limit * p.uy) / turn,
                  (p.ux * q.limit - q.ux * p.limit) / turn};
  }
  for (std::size_t i = 0; i < n; ++i) {
    const Point from = corners[(i + n - 1) % n], to = corners[i];
    const double along = (to.y - from.y) * lines[i].ux - (to.x - from.x) * lines[i].uy;
    if (!(along > 1e-6)) return {};
  }
  return corners;
}

}  // namespace

std::vector<Point> surrounding_polygon(const Outline& outline, double m, int sides) {
  if (m > outline.inradius() + length_dust) return {};
  m = std::min(m, outline.inradius());
  const std::vector<Tangent> lines = tangents(outline, m, sides);
  std::vector<Point> polygon = sides % 4 == 0 ? consecutive_corners(lines) : std::vector<Point>{};
  if (!polygon.empty()) return polygon;
  // Some lines are idle: clip by one after another.
  const double w = outline.half_length() + outline.top() + m;
  polygon = {{-w, -w}, {w, -w}, {w, w}, {-w, w}};
  std::vector<Point> clipped;
  for (const Tangent& line : lines) {
    clipped.clear();
    for (std::size_t i = 0; i < polygon.size(); ++i) {
      const Point p = polygon[i], q = polygon[(i + 1) % polygon.size()];
      const double dp = line.limit - (line.ux * p.x + line.uy * p.y);
      const double dq = line.limit - (line.ux * q.x + line.uy * q.y);
      if (dp >= 0.0) clipped.push_back(p);
      if ((dp < 0.0) != (dq < 0.0)) {
        const double f = dp / (dp - dq);
        clipped.push_back({p.x + f * (q.x - p.x), p.y + f * (q.y - p.y)});
      }
    }
    polygon.swap(clipped);
    if (polygon.empty()) return {};
  }
  return polygon;
}

PolygonSize size_of(const std::vector<Point>& polygon) {
  PolygonSize size;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Point p = polygon[i], q = polygon[(i + 1) % polygon.size()];
    size.area += (p.x * q.y - q.x * p.y) / 2.0;
    size.perimeter += std::sqrt((q.x - p.x) * (q.x - p.x) + (q.y - p.y) * (q.y - p.y));
  }
  return size;
}

}  // namespace bulbwright::packing
