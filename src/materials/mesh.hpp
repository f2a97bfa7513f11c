#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "base/quantity.hpp"
#include "catalogue/pest.hpp"
#include "pot/section.hpp"

namespace bulbwright {

/// What wire mesh does against an animal that a grower names.
struct PestMesh {
  Pest pest;
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

/// A mesh over the mix, under the rim.
struct MeshOverMix {
  Section outline;      ///< what to cut: the inner outline less 5 mm on every side
  Millimetres opening;  ///< at most: the narrowest that any of the pests needs
  int pins = 0;         ///< one for every 150 mm of its edge, at least 4 (common practice)
};

inline constexpr Millimetres mesh_clearance{5.0};
inline constexpr Millimetres pin_spacing{150.0};

/// `section` less the clearance on every side (a half-round loses it at the flat side too).
Section mesh_outline(const Section& section);

/// Pins for a mesh of that outline.
int pins_for(const Section& outline);

/// Greatest opening against all the pests for bulbs of that diameter and up; nothing where mesh
/// helps against none of them.
std::optional<Millimetres> mesh_opening(std::span<const Pest> pests, Millimetres smallest_bulb);

/// The mesh for a mix surface of that outline; nothing where it helps against none of the pests.
std::optional<MeshOverMix> mesh_over_mix(const Section& surface, std::span<const Pest> pests,
                                         Millimetres smallest_bulb);

}  // namespace bulbwright
