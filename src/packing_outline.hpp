#pragma once

#include <vector>

#include "bulbwright/section.hpp"

namespace bulbwright::packing {

struct Point {
  double x = 0.0;
  double y = 0.0;
};

/// A section as the packer sees it: a convex set with the depth of a point in it (distance to the
/// boundary, negative outside). A bulb of margin m is inside when depth >= m, so the true inner
/// parallel curve is used for every shape; an oval's is not an ellipse. Lengths mm. Only
/// + - * / sqrt are used, so that the answer is the same on every machine.
class Outline {
 public:
  explicit Outline(const Section& section);

  [[nodiscard]] Shape shape() const { return shape_; }
  [[nodiscard]] double half_length() const { return a_; }  ///< along x
  [[nodiscard]] double top() const { return b_; }          ///< greatest y
  [[nodiscard]] double bottom() const { return shape_ == Shape::half_round ? 0.0 : -b_; }
  [[nodiscard]] double corner() const { return corner_; }

  /// Distance to the boundary, mm, negative outside; error below 1e-9 mm for sizes up to 5 m.
  [[nodiscard]] double depth(Point p) const;

  /// Greatest depth, and where it is (for a rectangle the centre).
  [[nodiscard]] double inradius() const { return inradius_; }
  [[nodiscard]] Point deepest() const { return deepest_; }

  /// A cheap proof of depth >= m; false where only depth() can tell. Depth is concave, 0 on an
  /// ellipse and its least semi-axis in the middle, which gives the proof for curved outlines.
  [[nodiscard]] bool clearly_deeper(Point p, double m) const {
    switch (shape_) {
      case Shape::round: {
        const double room = a_ - m;
        return room > 0.0 && p.x * p.x + p.y * p.y <= room * room;
      }
      case Shape::rectangle: {
        const double ex = a_ - (p.x < 0.0 ? -p.x : p.x), ey = b_ - (p.y < 0.0 ? -p.y : p.y);
        return ex >= m && ey >= m && (ex >= corner_ || ey >= corner_);
      }
      case Shape::half_round:
        if (p.y < m) return false;
        [[fallthrough]];
      case Shape::oval: {
        const double room = 1.0 - m / (a_ < b_ ? a_ : b_), u = p.x / a_, v = p.y / b_;
        return room > 0.0 && u * u + v * v <= room * room;
      }
    }
    return false;
  }

  /// Penalty of a disc of margin m at p: the sum over the walls of max(0, m - depth)^2, its
  /// gradient added to gx, gy. Zero exactly where depth >= m.
  double push(Point p, double m, double& gx, double& gy) const;

  /// Distance from the origin to the tangent line with outward unit normal (ux, uy).
  [[nodiscard]] double support(double ux, double uy) const;

 private:
  struct Foot {
    double depth = 0.0;
    double nx = 0.0, ny = 0.0;  ///< inward unit normal at the nearest boundary point
    double qx = 0.0, qy = 0.0;  ///< nearest boundary point
  };
  [[nodiscard]] Foot ellipse_foot(Point p) const;
  [[nodiscard]] double ellipse_depth(Point p) const;
  double push_disc(double x, double y, double radius, double& gx, double& gy) const;
  double push_ellipse(Point p, double m, double& gx, double& gy) const;
  double push_rectangle(Point p, double m, double& gx, double& gy) const;

  Shape shape_;
  double a_;       ///< half the length
  double b_;       ///< half the width; the whole depth of a half-round
  double corner_;  ///< rectangle only
  double inradius_ = 0.0;
  Point deepest_;
};

/// The inner parallel body {depth >= m} as a polygon around it: `sides` tangent lines clipped one
/// by one. It contains the body, which makes bounds from its area and perimeter proofs. Empty when
/// no point is that deep.
std::vector<Point> surrounding_polygon(const Outline& outline, double m, int sides);

}  // namespace bulbwright::packing
