#include "materials/materials.hpp"

#include <algorithm>
#include <cassert>
#include <limits>
#include <numeric>

#include "catalogue/taxon.hpp"
#include "materials/bulb_volume.hpp"
#include "pot/pot_material.hpp"

namespace bulbwright {
namespace {

constexpr double shell_spread = 0.25;

Litres volume_of(const MaterialsKind& kind) {
  const double shape = shape_factor(kind.genus_shape, kind.height_to_diameter);
  return static_cast<double>(kind.count) * bulb_volume(kind.circumference_cm, shape);
}

Millimetres shorter_outer_side(const Pot& pot) {
  const Section rim = outer_size(pot, pot.thickness, pot.thickness).rim;
  return std::min(rim.length, rim.width);
}

}  // namespace

double drained_density(const MixKind& mix) {
  return (96.72 + 0.062 * mix.dry_g_per_l - mix.air_percent) / 100.0;
}

MixNeed mix_need(const Pot& pot, std::span<const FilledLayer> layers, double perlite_share) {
  assert(perlite_share >= 0.0 && perlite_share <= 1.0);
  MixNeed need;
  Millimetres from{0.0};
  Litres bulbs_below{0.0};
  const auto step = [&](Millimetres to) {
    const Litres mix = volume_between(pot, from, to) - bulbs_below;
    need.by_step.push_back(std::max(mix, Litres{0.0}));
    from = to;
  };
  for (const FilledLayer& layer : layers) {
    step(layer.base);
    bulbs_below = layer.bulb_volume;
  }
  step(mix_surface(pot));
  need.settled = std::accumulate(need.by_step.begin(), need.by_step.end(), Litres{0.0});
  need.loose = loose_per_settled * need.settled;
  need.perlite = perlite_share * need.loose;
  return need;
}

Kilograms shell_weight(const Pot& pot, Millimetres wall, Millimetres floor,
                       double density_kg_per_l) {
  return Kilograms{shell_volume(pot, wall, floor).value() * density_kg_per_l};
}

FilledWeight filled_weight(const Pot& pot, Litres settled_mix, Litres bulbs, const MixKind& mix) {
  const PotMaterial material = material_named(pot.material);
  FilledWeight weight;
  weight.shell = shell_weight(pot, pot.thickness, pot.thickness, material.density_kg_per_l);
  weight.shell_wet = (1.0 + material.water_share) * weight.shell;
  weight.mix = Kilograms{settled_mix.value() * drained_density(mix)};
  weight.bulbs = bulb_mass(bulbs);
  weight.total = weight.shell_wet + weight.mix + weight.bulbs;
  weight.low = (1.0 - shell_spread) * weight.shell_wet + weight.bulbs +
               Kilograms{settled_mix.value() * least_drained_density};
  weight.high = (1.0 + shell_spread) * weight.shell_wet + weight.bulbs +
                Kilograms{settled_mix.value() * most_drained_density};
  return weight;
}

Materials materials_for(const Pot& pot, std::span<const MaterialsLayer> layers,
                        std::span<const Pest> pests, bool wet_winter) {
  Materials materials;
  std::vector<FilledLayer> filled;
  Litres bulbs{0.0};
  Millimetres smallest{std::numeric_limits<double>::infinity()};
  for (const MaterialsLayer& layer : layers) {
    filled.push_back({layer.base, Litres{0.0}});
    for (const MaterialsKind& kind : layer.kinds) {
      if (kind.count <= 0) continue;
      filled.back().bulb_volume += volume_of(kind);
      smallest = std::min(smallest, diameter_of_circumference(kind.circumference_cm));
      ++materials.labels;
    }
    bulbs += filled.back().bulb_volume;
  }
  materials.mix = mix_need(pot, filled, wet_winter ? wet_winter_perlite_share : 0.0);
  materials.mesh = mesh_over_mix(section_at(pot, mix_surface(pot)), pests, smallest);
  materials.mesh_beneath = mesh_under_mix(section_at(pot, Millimetres{0.0}), pests);
  materials.weight = filled_weight(pot, materials.mix.settled, bulbs);
  materials.lift = judge_lift(materials.weight.total, shorter_outer_side(pot));
  return materials;
}

}  // namespace bulbwright
