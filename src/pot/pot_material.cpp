#include "pot/pot_material.hpp"

#include <array>
#include <string>
#include <vector>

#include <fmt/core.h>

#include "base/error.hpp"
#include "base/near_miss.hpp"

namespace bulbwright {
namespace {

// Densities and walls: from memory (typical trade ware). Conductivities are those of the same
// material as a building material, as the tables named print them.
constexpr std::array<PotMaterial, 15> materials{{
    {"terracotta", Millimetres{15.0}, 1.9, 0.12, 0.8, true, Origin::from_memory,
     Origin::from_memory,
     "density 1.8 to 2.0, wall 12 to 20 mm: from memory; water uptake 10 to 12 %: a general page "
     "on "
     "terracotta; conductivity between solid brick, 0.6 to 0.8, and clay tile, 1.0 (EN ISO 10456)"},
    {"stoneware", Millimetres{14.0}, 2.3, 0.01, 1.3, false, Origin::from_memory, Origin::published,
     "glazed; density, wall 12 to 16 mm and the little water it takes: from memory; conductivity: "
     "EN ISO 10456:2007, ceramic tiles (CIBSE Guide A, glazed ceramic: 1.4)"},
    {"plastic", Millimetres{3.0}, 0.91, 0.0, 0.22, false, Origin::published, Origin::published,
     "polypropylene: EN ISO 10077-2, 910 kg/m3 and 0.22 W/mK; wall 2 to 4 mm: from memory"},
    {"polyethylene", Millimetres{5.0}, 0.95, 0.0, 0.5, false, Origin::from_memory,
     Origin::published,
     "rotomoulded; density and wall 4 to 6 mm: from memory; EN ISO 10077-2, high density: 0.50"},
    {"fibreglass", Millimetres{5.0}, 1.7, 0.0, 0.4, false, Origin::from_memory, Origin::published,
     "glass-fibre resin; density and wall 4 to 6 mm: from memory (EN ISO 10077-2: 1.9); "
     "conductivity: EN ISO 10077-2, 0.40"},
    {"fibre-concrete", Millimetres{12.0}, 2.0, 0.05, 1.35, false, Origin::from_memory,
     Origin::published,
     "density, wall 10 to 15 mm and water: from memory; conductivity: EN ISO 10456:2007, concrete "
     "of 2000 kg/m3"},
    {"concrete", Millimetres{30.0}, 2.3, 0.05, 1.65, false, Origin::from_memory, Origin::published,
     "density, wall 25 to 40 mm and water: from memory; conductivity: EN ISO 10456:2007, concrete "
     "of 2200 kg/m3"},
    {"steel", Millimetres{0.8}, 7.85, 0.0, 50.0, false, Origin::from_memory, Origin::published,
     "zinc-coated sheet; wall 0.6 to 1.0 mm: from memory; conductivity: EN ISO 10456:2007"},
    {"zinc", Millimetres{0.8}, 7.1, 0.0, 110.0, false, Origin::from_memory, Origin::published,
     "sheet; wall 0.6 to 1.0 mm: from memory; conductivity: CIBSE Guide A, 113, rounded"},
    {"wood", Millimetres{20.0}, 0.5, 0.5, 0.13, false, Origin::published, Origin::published,
     "softwood boards: EN ISO 10077-2, 500 kg/m3 and 0.13 W/mK; wall and water: from memory"},
    // Words of garden centres for what stands above, and their felt bags.
    {"clay", Millimetres{15.0}, 1.9, 0.12, 0.8, true, Origin::from_memory, Origin::from_memory,
     "as terracotta"},
    {"glazed", Millimetres{14.0}, 2.3, 0.01, 1.3, false, Origin::from_memory, Origin::published,
     "as stoneware"},
    {"resin", Millimetres{5.0}, 0.95, 0.0, 0.5, false, Origin::from_memory, Origin::published,
     "as polyethylene"},
    {"metal", Millimetres{0.8}, 7.85, 0.0, 50.0, false, Origin::from_memory, Origin::published,
     "as steel"},
    {"fabric", Millimetres{3.0}, 0.25, 1.0, 0.1, false, Origin::from_memory, Origin::from_memory,
     "felt of plastic fibres; it takes up its own weight of water"},
}};

}  // namespace

std::span<const PotMaterial> known_materials() {
  return materials;
}

std::optional<PotMaterial> find_material(std::string_view name) {
  for (const PotMaterial& material : materials) {
    if (material.name == name) return material;
  }
  return std::nullopt;
}

PotMaterial material_named(std::string_view name) {
  if (const auto material = find_material(name)) return *material;
  std::vector<std::string_view> names;
  std::string list;
  for (const PotMaterial& material : materials) {
    if (!names.empty()) list += &material == &materials.back() ? " or " : ", ";
    names.push_back(material.name);
    list += material.name;
  }
  throw InvalidValue{"pot.material", fmt::format("unknown material {}{}; expected {}",
                                                 in_quotes(name), did_you_mean(name, names), list)};
}

}  // namespace bulbwright
