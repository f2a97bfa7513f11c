#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "bulbwright/effort.hpp"

namespace bulbwright::library {

/// Equal circles in an outline, none touching.

enum class Shape {
  round,      ///< length: diameter
  oval,       ///< length and width: the axes
  rectangle,  ///< length, width, corner: radius of its corners
  half_round  ///< length: the flat side, width: from it to the farthest point
};

/// Inner sizes in millimetres, above 0 and at most 5,000; corner at most half the shorter side.
struct Outline {
  Shape shape = Shape::round;
  double length_mm = 0.0;
  double width_mm = 0.0;  ///< not read for a round outline
  double corner_mm = 0.0;
};

/// From the middle of the outline (of the flat side, for a half-round), x along its length.
struct Point {
  double x_mm = 0.0;
  double y_mm = 0.0;
};

/// A layout as certified: the points as given were checked, every pair and every wall.
struct Layout {
  std::vector<Point> points;
  std::size_t upper_bound = 0;  ///< no layout can hold more; proven
  std::string bound_name;       ///< by whom
  double least_gap_mm = 0.0;    ///< between any two; infinity below two points
  double least_wall_mm = 0.0;   ///< infinity without points
};

/// The most circles of `diameter_mm` with `gap_mm` between them and `wall_mm` to the outline that
/// are found with that effort. No room gives no points.
/// @throws BadInput for a size that cannot be.
Layout pack(const Outline& outline, double diameter_mm, double gap_mm, double wall_mm,
            Effort effort = Effort::normal);

}  // namespace bulbwright::library
