// make_pot(): from what the grower gave to a resolved pot, every size checked.
#include <algorithm>
#include <cmath>

#include <fmt/core.h>

#include "base/error.hpp"
#include "pot/outline_size.hpp"
#include "pot/pot.hpp"
#include "pot/pot_material.hpp"

namespace bulbwright {
namespace {

using Size = OutlineSize;

/// The side that proportions are judged by: the shorter one, a half-round completed to a whole.
Millimetres shorter_side(Shape shape, Size size) {
  return std::min(size.length, shape == Shape::half_round ? 2.0 * size.width : size.width);
}

/// Inner size from outer.
Millimetres without(Millimetres outer, Millimetres walls, const char* field) {
  const Millimetres inner = outer - walls;
  if (inner > Millimetres{0.0}) return inner;
  throw InvalidValue{field, fmt::format("{} outside leaves no room between walls of {} in all",
                                        in_mm(outer), in_mm(walls))};
}

Size without_walls(Size outer, Millimetres wall, const char* field) {
  return {without(outer.length, 2.0 * wall, field), without(outer.width, 2.0 * wall, field)};
}

/// Base of a usual taper: the same inset on every side.
Size assumed_base(Shape shape, Size rim, Pot& pot) {
  const Millimetres inset = (1.0 - default_base_share) * shorter_side(shape, rim);
  const Size base{rim.length - inset,
                  rim.width - (shape == Shape::half_round ? inset / 2.0 : inset)};
  pot.notes.push_back({PotNoteKind::base_assumed, default_base_share, base.length});
  return base;
}

void check_base(Size rim, Size base) {
  const auto too_wide = [](Millimetres b, Millimetres r) { return b > largest_base_share * r; };
  if (!too_wide(base.length, rim.length) && !too_wide(base.width, rim.width)) return;
  const bool by_length = too_wide(base.length, rim.length);
  throw InvalidValue{
      "pot.base", fmt::format("{} is too wide for a rim of {}; expected at most {:g} times the rim "
                              "(an urn or a belly is given by its profile)",
                              in_mm(by_length ? base.length : base.width),
                              in_mm(by_length ? rim.length : rim.width), largest_base_share)};
}

Millimetres corner_at(const PotRequest& request, Size size, Millimetres corner) {
  if (request.shape != Shape::rectangle) return Millimetres{0.0};
  return std::min(corner, std::min(size.length, size.width) / 2.0);
}

void take_taper(const PotRequest& request, Pot& pot) {
  const Shape shape = request.shape;
  if (!request.top)
    throw InvalidValue{"pot.top", "missing; expected the width of the rim, such as \"380 mm\""};
  const Millimetres wall = request.thickness.value_or(Millimetres{0.0});
  const Size outer_rim = outline_size(shape, *request.top, "pot.top");
  const Size rim = without_walls(outer_rim, wall, "pot.top");
  if (shape == Shape::half_round && !request.top->paired)
    pot.notes.push_back({PotNoteKind::depth_assumed, 0.5, rim.width});

  Size base;
  if (request.base) {
    if (request.top->paired && !request.base->paired && shape != Shape::round) {
      throw InvalidValue{"pot.base",
                         "expected two lengths like those of the top, such as \"560 mm x 160 mm\""};
    }
    base = without_walls(outline_size(shape, *request.base, "pot.base"), wall, "pot.base");
    check_base(rim, base);
  } else {
    base = assumed_base(shape, rim, pot);
  }

  Millimetres height;
  if (request.height) {
    check_size(*request.height, "pot.height");
    height = without(*request.height, wall, "pot.height");
  } else {
    height = default_height_share * shorter_side(shape, rim);
    pot.notes.push_back({PotNoteKind::height_assumed, default_height_share, height});
  }
  check_corner(shape, outer_rim, request.corner, "pot.corner");
  const Millimetres corner = std::max(Millimetres{0.0}, request.corner - wall);
  pot.levels = {{Millimetres{0.0}, base.length, base.width, corner_at(request, base, corner)},
                {height, rim.length, rim.width, corner_at(request, rim, corner)}};
}

/// The keys of a level's two sizes in a pot file.
struct SizeKeys {
  const char* length;
  const char* width;
};
SizeKeys size_keys(Shape shape) {
  switch (shape) {
    case Shape::round:
      return {".width", ".width"};
    case Shape::half_round:
      return {".width", ".depth"};
    case Shape::oval:
    case Shape::rectangle:
      break;
  }
  return {".length", ".width"};
}

void check_step(const PotLevel& below, const PotLevel& here, const std::string& field,
                SizeKeys keys) {
  if (here.height <= below.height)
    throw InvalidValue{field + ".height",
                       fmt::format("expected more than the level below, {}", in_mm(below.height))};
  const auto jumps = [](Millimetres a, Millimetres b) {
    return a > largest_profile_step * b || b > largest_profile_step * a;
  };
  const bool by_width = jumps(below.width, here.width);
  if (!by_width && !jumps(below.length, here.length)) return;
  throw InvalidValue{
      field + (by_width ? keys.width : keys.length),
      fmt::format("expected at most {:g} times wider or narrower than the level below",
                  largest_profile_step)};
}

void take_profile(const PotRequest& request, Pot& pot) {
  if (request.top || request.base || request.height) {
    throw InvalidValue{"pot.profile",
                       "expected instead of top, base and height, not together with them"};
  }
  if (request.profile.size() < 2)
    throw InvalidValue{"pot.profile", "expected at least two levels, the floor first"};
  const SizeKeys keys = size_keys(request.shape);
  const ProfileLevel& top = request.profile.back();
  const Millimetres corner = request.corner;
  check_corner(request.shape, {top.length, top.width}, corner, "pot.corner");
  for (std::size_t i = 0; i < request.profile.size(); ++i) {
    const ProfileLevel& given = request.profile[i];
    const std::string field = fmt::format("pot.profile[{}]", i);
    if (i == 0 && given.height != Millimetres{0.0})
      throw InvalidValue{field + ".height", "expected 0 mm, the inner floor"};
    if (i > 0) check_size(given.height, field + ".height");
    check_size(given.width, field + keys.width);
    check_size(given.length, field + keys.length);
    if (request.shape == Shape::round && given.length != given.width)
      throw InvalidValue{field + ".width", "expected one width for a round pot"};
    const Size size{given.length, given.width};
    const PotLevel level{given.height, size.length, size.width, corner_at(request, size, corner)};
    if (i > 0) check_step(pot.levels.back(), level, field, keys);
    pot.levels.push_back(level);
  }
}

void take_wall(const PotRequest& request, Pot& pot) {
  if (request.material.empty()) {
    pot.material = default_material;
    pot.notes.push_back({PotNoteKind::material_assumed, 0.0, Millimetres{0.0}});
  } else {
    pot.material = material_named(request.material).name;
  }
  if (!request.thickness) {
    pot.thickness = material_named(pot.material).usual_wall;
    return;
  }
  const Millimetres wall = *request.thickness;
  if (!std::isfinite(wall.value()) || wall < Millimetres{0.0})
    throw InvalidValue{"pot.thickness", "expected a length of 0 mm or more"};
  if (wall > largest_pot_size) {
    throw InvalidValue{"pot.thickness", fmt::format("{} is more than {}; check the unit",
                                                    in_mm(wall), in_mm(largest_pot_size))};
  }
  pot.thickness = wall;
  if (request.profile.empty()) pot.notes.push_back({PotNoteKind::outer_converted, 0.0, wall});
}

void take_headspace(const PotRequest& request, Pot& pot) {
  pot.headspace = request.headspace.value_or(default_headspace);
  if (!std::isfinite(pot.headspace.value()) || pot.headspace < Millimetres{0.0})
    throw InvalidValue{"pot.headspace", "expected a length of 0 mm or more"};
  const Millimetres height = inner_height(pot);
  if (pot.headspace < height) return;
  if (request.headspace) {
    throw InvalidValue{"pot.headspace",
                       fmt::format("expected less than the inner height, {}", in_mm(height))};
  }
  if (request.profile.empty() && !request.height) {
    throw InvalidValue{"pot.top",
                       fmt::format("a pot so wide is taken to be {} high, which leaves no room for "
                                   "mix under a headspace of {}; give its height",
                                   in_mm(height), in_mm(pot.headspace))};
  }
  throw InvalidValue{request.profile.empty() ? "pot.height" : "pot.profile",
                     fmt::format("{} inside leaves no room for mix under a headspace of {}",
                                 in_mm(height), in_mm(pot.headspace))};
}

}  // namespace

Pot make_pot(const PotRequest& request) {
  Pot pot;
  pot.name = request.name;
  pot.shape = request.shape;
  take_wall(request, pot);
  if (request.profile.empty()) {
    take_taper(request, pot);
  } else {
    take_profile(request, pot);
  }
  take_headspace(request, pot);
  return pot;
}

}  // namespace bulbwright
