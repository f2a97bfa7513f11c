#pragma once

#include <array>
#include <vector>

#include "pot/section.hpp"

namespace bulbwright::packing {

struct Point {
  double x = 0.0;
  double y = 0.0;
};

/// Lengths of an input are decimals and meet exactly where they are meant to; in binary their sums
/// miss by far less than this, mm. What is nearer is equal: an exact fit fits.
inline constexpr double length_dust = 1e-9;

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

  /// A cheap proof of depth >= m; false where only depth() can tell. For curved outlines p lies in
  /// an ellipse that keeps a distance of m from the outline, see inner_ellipse().
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
      case Shape::oval:
        if (m < 0.0 || m > a_ || m > b_) return false;
        for (const Touch& touch : touches_) {
          if (in_inner_ellipse(p, m, touch)) return true;
        }
        return false;
    }
    return false;
  }

  /// depth(p) >= m, mostly without working out the depth.
  [[nodiscard]] bool is_deep(Point p, double m) const;

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

  /// Where an inner ellipse touches the inner parallel curve: the square of its normal's x, and the
  /// outline's support w = sqrt(a^2 t + b^2 (1 - t)) in that direction.
  struct Touch {
    double t = 0.0, w = 0.0, inverse = 0.0;
  };

  /// An ellipse of semi-axes A, B keeps m from the outline where its support plus m is no more than
  /// the outline's for every normal: A^2 t + B^2 (1 - t) <= (sqrt(a^2 t + b^2 (1 - t)) - m)^2 for
  /// t in 0..1, m from 0 to both semi-axes. The right side is convex in t, so each of its tangents
  /// gives such A and B.
  [[nodiscard]] bool in_inner_ellipse(Point p, double m, const Touch& touch) const {
    const double room = touch.w - m;
    const double slope = (a_ * a_ - b_ * b_) * (1.0 - m * touch.inverse);
    const double bb = room * room - slope * touch.t, aa = bb + slope;
    return room > 0.0 && aa > 0.0 && bb > 0.0 && p.x * p.x * bb + p.y * p.y * aa <= aa * bb;
  }

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
  std::array<Touch, 4> touches_{};  ///< curved outlines only
};

/// The inner parallel body {depth >= m} as a polygon around it: `sides` tangent lines clipped one
/// by one. It contains the body, which makes bounds from its area and perimeter proofs. Empty when
/// no point is that deep; one that is as deep but for length_dust counts.
std::vector<Point> surrounding_polygon(const Outline& outline, double m, int sides);

/// Area (mm2) and perimeter (mm) of a polygon with its corners counterclockwise; 0 of none.
struct PolygonSize {
  double area = 0.0, perimeter = 0.0;
};
PolygonSize size_of(const std::vector<Point>& polygon);

}  // namespace bulbwright::packing
