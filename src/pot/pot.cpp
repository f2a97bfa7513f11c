#include "pot/pot.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <span>

#include <fmt/core.h>

namespace bulbwright {
namespace {

constexpr double cubic_millimetres_per_litre = 1e6;

Section section_of(Shape shape, const PotLevel& level) {
  return {shape, level.length, level.width, level.corner};
}

PotLevel between(const PotLevel& a, const PotLevel& b, double height) {
  const double t = (height - a.height.value()) / (b.height.value() - a.height.value());
  const auto mixed = [t](Millimetres x, Millimetres y) { return x + t * (y - x); };
  return {Millimetres{height}, mixed(a.length, b.length), mixed(a.width, b.width),
          mixed(a.corner, b.corner)};
}

double clamped_height(const Pot& pot, Millimetres height) {
  return std::clamp(height.value(), 0.0, inner_height(pot).value());
}

PotLevel level_at(const Pot& pot, double height) {
  const auto& levels = pot.levels;
  for (std::size_t i = 1; i < levels.size(); ++i) {
    if (height == levels[i - 1].height.value()) return levels[i - 1];
    if (height < levels[i].height.value()) return between(levels[i - 1], levels[i], height);
  }
  return levels.back();
}

/// The levels that bound the straight pieces of [lower, upper]: both ends and all kinks between.
std::vector<PotLevel> pieces(const Pot& pot, double lower, double upper) {
  std::vector<PotLevel> ends{level_at(pot, lower)};
  for (const PotLevel& level : pot.levels) {
    if (level.height.value() > lower && level.height.value() < upper) ends.push_back(level);
  }
  ends.push_back(level_at(pot, upper));
  return ends;
}

/// Simpson's rule over straight pieces, exact since the area is quadratic on each.
double volume_mm3(Shape shape, std::span<const PotLevel> levels) {
  double sum = 0.0;
  for (std::size_t i = 1; i < levels.size(); ++i) {
    const PotLevel &a = levels[i - 1], &b = levels[i];
    const double height = b.height.value() - a.height.value();
    if (height <= 0.0) continue;
    const PotLevel middle = between(a, b, (a.height.value() + b.height.value()) / 2.0);
    sum += height / 6.0 *
           (area_mm2(section_of(shape, a)) + 4.0 * area_mm2(section_of(shape, middle)) +
            area_mm2(section_of(shape, b)));
  }
  return sum;
}

/// Perimeter of an ellipse of full axes a, b. Source: Ramanujan, "Modular equations and
/// approximations to pi", 1914, second formula (error under 0.05 % up to axes of 10 : 1).
double ellipse_perimeter(double a, double b) {
  const double h = (a - b) * (a - b) / ((a + b) * (a + b));
  return std::numbers::pi / 2.0 * (a + b) * (1.0 + 3.0 * h / (10.0 + std::sqrt(4.0 - 3.0 * h)));
}

PotLevel grown(Shape shape, PotLevel level, Millimetres wall) {
  level.length += 2.0 * wall;
  level.width += 2.0 * wall;
  if (shape == Shape::rectangle) level.corner += wall;
  return level;
}

}  // namespace

double perimeter_mm(const Section& section) {
  const double a = section.length.value(), b = section.width.value();
  switch (section.shape) {
    case Shape::round:
      return std::numbers::pi * a;
    case Shape::oval:
      return ellipse_perimeter(a, b);
    case Shape::half_round:
      return ellipse_perimeter(a, 2.0 * b) / 2.0 + a;
    case Shape::rectangle:
      return 2.0 * (a + b) - (8.0 - 2.0 * std::numbers::pi) * section.corner.value();
  }
  return 0.0;
}

Remark remark_of(const PotNote& note) {
  using enum RemarkCode;
  switch (note.kind) {
    case PotNoteKind::base_assumed:
      return {base_share, {}, {{DetailName::share, note.factor}}};
    case PotNoteKind::height_assumed:
      return {height_share, {}, {{DetailName::share, note.factor}}};
    case PotNoteKind::depth_assumed:
      return {half_depth};
    case PotNoteKind::outer_converted:
      return {outer_sizes};
    case PotNoteKind::material_assumed:
      break;
  }
  return {usual_material, {}, {{DetailName::material, std::string{default_material}}}};
}

Millimetres inner_height(const Pot& pot) {
  return pot.levels.back().height;
}

Millimetres mix_surface(const Pot& pot) {
  return inner_height(pot) - pot.headspace;
}

Section section_at(const Pot& pot, Millimetres height) {
  return section_of(pot.shape, level_at(pot, clamped_height(pot, height)));
}

Section smallest_section(const Pot& pot, Millimetres from, Millimetres height) {
  const double lower = clamped_height(pot, from);
  const double upper = std::max(lower, clamped_height(pot, from + height));
  const std::vector<PotLevel> ends = pieces(pot, lower, upper);
  PotLevel least = ends.front();
  for (const PotLevel& level : ends) {
    least.length = std::min(least.length, level.length);
    least.width = std::min(least.width, level.width);
    least.corner = std::max(least.corner, level.corner);
  }
  // A corner wider than half the least side: the round-ended outline is inside every cut as well.
  least.corner = std::min(least.corner, std::min(least.length, least.width) / 2.0);
  return section_of(pot.shape, least);
}

Litres volume_between(const Pot& pot, Millimetres lower, Millimetres upper) {
  const double z0 = clamped_height(pot, lower), z1 = clamped_height(pot, upper);
  if (!(z1 > z0)) return Litres{0.0};
  return Litres{volume_mm3(pot.shape, pieces(pot, z0, z1)) / cubic_millimetres_per_litre};
}

Litres full_volume(const Pot& pot) {
  return volume_between(pot, Millimetres{0.0}, inner_height(pot));
}

double side_area_mm2(const Pot& pot, Millimetres lower, Millimetres upper) {
  const double z0 = clamped_height(pot, lower), z1 = clamped_height(pot, upper);
  if (!(z1 > z0)) return 0.0;
  const std::vector<PotLevel> ends = pieces(pot, z0, z1);
  double sum = 0.0;
  for (std::size_t i = 1; i < ends.size(); ++i) {
    const PotLevel &a = ends[i - 1], &b = ends[i];
    const double rise = (b.height - a.height).value();
    // Mean inset of the wall over the two directions; a half-round's back stands upright.
    const double along = (b.length - a.length).value() / 2.0;
    const double across =
        (b.width - a.width).value() / (pot.shape == Shape::half_round ? 1.0 : 2.0);
    const double slant = (std::hypot(rise, along) + std::hypot(rise, across)) / 2.0;
    sum += slant *
           (perimeter_mm(section_of(pot.shape, a)) + perimeter_mm(section_of(pot.shape, b))) / 2.0;
  }
  return sum;
}

double exposed_area_mm2(const Pot& pot) {
  const Millimetres surface = mix_surface(pot);
  return side_area_mm2(pot, Millimetres{0.0}, surface) + area_mm2(section_at(pot, surface));
}

OuterSize outer_size(const Pot& pot, Millimetres wall, Millimetres floor) {
  return {section_of(pot.shape, grown(pot.shape, pot.levels.back(), wall)),
          section_of(pot.shape, grown(pot.shape, pot.levels.front(), wall)),
          inner_height(pot) + floor};
}

Litres shell_volume(const Pot& pot, Millimetres wall, Millimetres floor) {
  std::vector<PotLevel> outer;
  for (PotLevel level : pot.levels) {
    level = grown(pot.shape, level, wall);
    // The outer bottom lies `floor` lower and the taper is drawn from there, as pots are measured.
    level.height += level.height > Millimetres{0.0} ? floor : Millimetres{0.0};
    outer.push_back(level);
  }
  const double inner = volume_mm3(pot.shape, pot.levels);
  return Litres{(volume_mm3(pot.shape, outer) - inner) / cubic_millimetres_per_litre};
}

}  // namespace bulbwright
