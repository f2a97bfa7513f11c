#pragma once

#include <vector>

#include "packing/outline.hpp"

namespace bulbwright::packing {

/// Outlines come in every size; layouts are looked for in standard ones only, 1000 mm long and of
/// proportions in steps. One of them, made larger or smaller, lies within the outline asked for,
/// and a layout in it is one there: what a narrow pot was found to hold, a wider one holds too, for
/// the standard outlines within the narrow one lie within the wider one.
struct Standard {
  Section section;
  double margin = 0.0;  ///< that centres keep from it, mm
};

/// A standard outline within the part of an outline that is `margin` deep.
struct Nested {
  Standard standard;
  double scale = 1.0;   ///< from its lengths to the outline's
  double rise = 0.0;    ///< added to y, mm
  bool turned = false;  ///< its length lies along the outline's y

  /// A place in the standard outline as it lies in the outline.
  [[nodiscard]] Point placed(Point p) const {
    const Point q{scale * p.x, scale * p.y + rise};
    return turned ? Point{q.y, q.x} : q;
  }
};

/// The standard outlines next to an outline's own proportions, the nearest first. Empty where
/// nothing is so deep. Source of the nesting: of two outlines of one shape the one no longer, no
/// wider and with no less margin has its inner part in the other's (for a half-round with the flat
/// sides of the inner parts put on one line).
std::vector<Nested> nested_standards(const Outline& outline, double margin);

}  // namespace bulbwright::packing
