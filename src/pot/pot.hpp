#pragma once

#include <string>
#include <vector>

#include "base/detail.hpp"
#include "base/quantity.hpp"
#include "pot/pot_request.hpp"
#include "pot/section.hpp"

namespace bulbwright {

/// One level of a resolved pot: inner sizes at a height above the inner floor.
struct PotLevel {
  Millimetres height;
  Millimetres length;  ///< along x (diameter; width of a half-round)
  Millimetres width;   ///< along y (diameter; depth of a half-round)
  Millimetres corner;  ///< rectangle only, else 0; at most half the shorter side
};

/// Something assumed or converted while a pot was resolved, for the output to say.
enum class PotNoteKind {
  base_assumed,      ///< factor: share of the rim's shorter side, value: base length
  height_assumed,    ///< factor: share of the rim's shorter side, value: inner height
  depth_assumed,     ///< half-round of one width: depth is half of it; value: depth at the rim
  outer_converted,   ///< sizes were outer; value: wall and floor taken off
  material_assumed,  ///< none was given: default_material
};

struct PotNote {
  PotNoteKind kind = PotNoteKind::base_assumed;
  double factor = 0.0;
  Millimetres value;
};

/// The note as it is said: without any length, so that it holds in every unit.
Remark remark_of(const PotNote& note);

/// A pot, resolved. Invariant, kept by make_pot(): at least two levels, the first at height 0,
/// heights strictly rising, every size finite and above 0, 0 <= headspace < inner height. Sizes
/// between two levels are joined linearly.
struct Pot {
  std::string name;
  Shape shape = Shape::round;
  std::vector<PotLevel> levels;  ///< from the inner floor up to the rim
  Millimetres headspace;         ///< rim to mix surface
  std::string material;          ///< a name of known_materials()
  Millimetres thickness;         ///< of wall and floor: given, or the material's usual; 0 or more
  std::vector<PotNote> notes;
};

/// Where the grower gives none.
/// Rim to mix surface, about an inch. common practice
inline constexpr Millimetres default_headspace{25.0};
/// The heaviest and most frost-tender of the usual materials, so that what follows from it errs on
/// the careful side. common practice
inline constexpr const char* default_material = "terracotta";
/// Base of a usual tapered pot as a share of the rim (its shorter side; a trough tapers by the same
/// amount on all sides). common practice: flower pots run from 0.67 to 0.8
inline constexpr double default_base_share = 0.75;
/// Inner height as a share of the rim's shorter side (twice the depth for a half-round). Standard
/// pots are as high as wide, azalea pots three quarters; wide patio pots lie between. common
/// practice
inline constexpr double default_height_share = 0.9;
/// Greatest base as a share of the rim in a pot given by rim and base alone; anything wider needs
/// a profile.
inline constexpr double largest_base_share = 1.25;
/// Neighbouring widths of a profile differ by at most this factor.
inline constexpr double largest_profile_step = 4.0;
/// Greatest length anywhere. A misplaced unit is likelier than a pot above it.
inline constexpr Millimetres largest_pot_size{5000.0};

/// Resolves and checks a pot. Outer sizes (`thickness` present) lose the wall at every side and
/// the floor at the bottom; a profile is always of inner sizes.
/// @throws InvalidValue with the field as its path in a pot file ("pot.top") and what is expected.
Pot make_pot(const PotRequest& request);

/// Rim above the inner floor.
Millimetres inner_height(const Pot& pot);

/// Mix surface above the inner floor: inner height less headspace.
Millimetres mix_surface(const Pot& pot);

/// The cut at `height` above the inner floor, taken within [0, inner height].
Section section_at(const Pot& pot, Millimetres height);

/// A section that every cut over [from, from + height] contains: the least length and width and
/// the widest corner found there, all levels in between included. Exact for one taper; for a
/// profile whose length and width are least at different heights it is on the safe side.
Section smallest_section(const Pot& pot, Millimetres from, Millimetres height);

/// Inner volume between two heights, both taken within [0, inner height]; 0 where upper <= lower.
/// The area is quadratic in height on each straight piece, where Simpson's rule is exact.
/// Source: frustum formulas (Weisstein, "Conical Frustum", MathWorld) are the same number.
Litres volume_between(const Pot& pot, Millimetres lower, Millimetres upper);

/// Floor to rim.
Litres full_volume(const Pot& pot);

/// Length of the outline in mm, a half-round's flat side included. Exact for round and rectangle;
/// ellipses by Ramanujan's second formula (1914), within 0.05 % up to axes of 10 : 1.
double perimeter_mm(const Section& section);

/// Inner surface of the wall between two heights, in mm^2: exact for a round pot; otherwise the
/// mean perimeter times the mean slant of each straight piece (within about 2 % for usual tapers).
double side_area_mm2(const Pot& pot, Millimetres lower, Millimetres upper);

/// Through which the mix gives and takes heat: wall up to the mix surface, and the surface; the
/// floor is left out. In mm^2.
double exposed_area_mm2(const Pot& pot);

/// Volume of wall and floor of that thickness around the inside: every outer width is the inner
/// one plus twice the wall, the outer height the inner plus the floor.
Litres shell_volume(const Pot& pot, Millimetres wall, Millimetres floor);

/// Outer sizes at rim and base, and outer height, for that wall and floor.
struct OuterSize {
  Section rim;
  Section base;
  Millimetres height;
};
OuterSize outer_size(const Pot& pot, Millimetres wall, Millimetres floor);

}  // namespace bulbwright
