#include "bulbwright/packing.hpp"

#include <algorithm>
#include <cmath>

#include "library/translate.hpp"
#include "packing/packing.hpp"
#include "pot/pot.hpp"

namespace bulbwright::library {
namespace {

void require(bool holds, const char* field, const char* expected) {
  if (!holds) throw InvalidValue{field, expected};
}

Millimetres size(double value, double least, const char* field, const char* expected) {
  require(std::isfinite(value) && value >= least && value <= largest_pot_size.value(), field,
          expected);
  return Millimetres{value};
}

Section section_of(const Outline& outline) {
  constexpr const char* side = "1 to 5,000 mm";
  const Millimetres length = size(outline.length_mm, 1.0, "length_mm", side);
  if (outline.shape == Shape::round) {
    require(outline.corner_mm == 0.0, "corner_mm", "0: only a rectangle has corners");
    return {bulbwright::Shape::round, length, length, Millimetres{0.0}};
  }
  const Millimetres width = size(outline.width_mm, 1.0, "width_mm", side);
  if (outline.shape == Shape::rectangle) {
    const double most = std::min(outline.length_mm, outline.width_mm) / 2.0;
    require(outline.corner_mm >= 0.0 && outline.corner_mm <= most, "corner_mm",
            "0 to half the shorter side");
    return {bulbwright::Shape::rectangle, length, width, Millimetres{outline.corner_mm}};
  }
  require(outline.corner_mm == 0.0, "corner_mm", "0: only a rectangle has corners");
  const auto shape =
      outline.shape == Shape::oval ? bulbwright::Shape::oval : bulbwright::Shape::half_round;
  return {shape, length, width, Millimetres{0.0}};
}

}  // namespace

Layout pack(const Outline& outline, double diameter_mm, double gap_mm, double wall_mm,
            Effort effort) {
  return translated([&] {
    const Section section = section_of(outline);
    const PackKind kind{size(diameter_mm, 1.0, "diameter_mm", "1 to 5,000 mm"), 1.0, 0};
    const Packing packing =
        pack_most(section, {&kind, 1}, size(gap_mm, 0.0, "gap_mm", "0 to 5,000 mm"),
                  size(wall_mm, 0.0, "wall_mm", "0 to 5,000 mm"), effort_of(effort));
    Layout layout;
    for (const PlacedBulb& bulb : packing.bulbs) layout.points.push_back({bulb.x_mm, bulb.y_mm});
    layout.upper_bound = packing.upper_bound;
    layout.bound_name = packing.bound_name;
    layout.least_gap_mm = packing.least_gap.value();
    layout.least_wall_mm = packing.least_wall.value();
    return layout;
  });
}

}  // namespace bulbwright::library
