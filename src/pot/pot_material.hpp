#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "base/origin.hpp"
#include "base/quantity.hpp"

namespace bulbwright {

/// What a pot may be made of. Densities and walls are typical: real pots vary by a quarter, so
/// every weight made from them is "about".
struct PotMaterial {
  std::string_view name;         ///< the word of a pot file, lower case: "terracotta"
  Millimetres usual_wall;        ///< wall and floor thickness where the grower gives none
  double density_kg_per_l;       ///< of the dry material (kg/L = g/cm^3)
  double water_share;            ///< water a soaked wall takes up, as a share of its dry mass
  double conductivity_w_per_mk;  ///< of the dry wall, W/(m K)
  bool cracks_in_frost;          ///< a porous wall that freezing water splits
  Origin density_origin;         ///< of density and wall
  Origin conductivity_origin;
  std::string_view source;  ///< of both
};

/// All materials, most usual first.
std::span<const PotMaterial> known_materials();

/// The material of that exact name, or nothing.
std::optional<PotMaterial> find_material(std::string_view name);

/// As find_material. @throws InvalidValue "pot.material" with a near miss and the names known.
PotMaterial material_named(std::string_view name);

}  // namespace bulbwright
