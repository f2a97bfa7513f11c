#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "base/quantity.hpp"
#include "catalogue/pest.hpp"
#include "pot/section.hpp"

namespace bulbwright {

/// Where mesh stops an animal: over the mix, or beneath it, over the holes.
enum class MeshPlace { over, beneath };

/// What wire mesh does against an animal that a grower names.
struct PestMesh {
  Pest pest;
  MeshPlace place;
  std::optional<Millimetres>
      opening;  ///< greatest opening that keeps it out; none: mesh is no help
  /// Where the opening for small bulbs is narrower: a bulb under `small_bulb` is drawn through.
  std::optional<Millimetres> small_bulb_opening;
  Origin origin = Origin::common_practice;
  std::string_view source;
};

/// Bulbs narrower than this count as small for squirrels and chipmunks. common practice
inline constexpr Millimetres small_bulb{30.0};

/// What helps against that animal.
const PestMesh& mesh_against(Pest pest);

/// A piece of mesh, over the mix under the rim or on the floor over the holes.
struct Mesh {
  Section outline;      ///< what to cut: the inner outline less 5 mm on every side
  Millimetres opening;  ///< at most: the narrowest that any of the pests needs
  int pins = 0;         ///< one for every 300 mm of its edge, at least 3: three or four in a pot of
                        ///< 380 mm (common practice)
};

inline constexpr Millimetres mesh_clearance{5.0};
inline constexpr Millimetres pin_spacing{300.0};
inline constexpr int least_pins = 3;

/// `section` less the clearance on every side (a half-round loses it at the flat side too).
Section mesh_outline(const Section& section);

/// Pins for a mesh of that outline.
int pins_for(const Section& outline);

/// Greatest opening over the mix against all the pests for bulbs of that diameter and up; nothing
/// where mesh there helps against none of them.
std::optional<Millimetres> mesh_opening(std::span<const Pest> pests, Millimetres smallest_bulb);

/// Greatest opening of a mesh beneath the mix; nothing where none of the pests comes from below.
std::optional<Millimetres> mesh_beneath(std::span<const Pest> pests);

/// The mesh for a mix surface of that outline; nothing where it helps against none of the pests.
std::optional<Mesh> mesh_over_mix(const Section& surface, std::span<const Pest> pests,
                                  Millimetres smallest_bulb);

/// The mesh for a floor of that outline, without pins; nothing where none of the pests comes from
/// below.
std::optional<Mesh> mesh_under_mix(const Section& floor, std::span<const Pest> pests);

}  // namespace bulbwright
