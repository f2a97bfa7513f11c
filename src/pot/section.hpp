#pragma once

#include "base/enum_words.hpp"
#include "base/quantity.hpp"

namespace bulbwright {

enum class Shape { round, oval, rectangle, half_round };
constexpr auto enum_words(Shape) {
  return words_to<Shape::half_round>("round", "oval", "rectangle", "half-round");
}

/// A horizontal cut of the pot's inside: the outline that bulbs must stay within. Always convex.
/// Origin of coordinates: the centre; for a half-round the middle of the flat side, y away from it.
/// x runs along the length.
/// - round: length = width = diameter
/// - oval: an ellipse with these axes
/// - rectangle: with a corner radius from 0 to half the shorter side
/// - half_round: half an ellipse, length = width along the flat side, width = depth away from it
struct Section {
  Shape shape = Shape::round;
  Millimetres length;  ///< full size along x, above 0
  Millimetres width;   ///< full size along y, above 0
  Millimetres corner;  ///< rectangle only, else 0

  bool operator==(const Section&) const = default;
};

/// Exact area in mm^2.
double area_mm2(const Section& section);

}  // namespace bulbwright
