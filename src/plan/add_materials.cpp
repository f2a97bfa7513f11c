#include <cmath>
#include <set>

#include "plan/care_dates.hpp"
#include "plan/parts.hpp"

namespace bulbwright {
namespace {

/// Spares for bulbs lost before planting: one in ten, rounded up, until a grower's own losses are
/// known. common practice
constexpr int spare_divisor = 10;

std::vector<MaterialsLayer> material_layers(const PlanFacts& facts, const Plan& plan) {
  std::vector<MaterialsLayer> layers;
  for (const PlannedLayer& planned : plan.layers) {
    const ResolvedLayer& resolved = facts.layers[static_cast<std::size_t>(planned.level - 1)];
    MaterialsLayer layer;
    layer.base = planned.above_floor;
    for (std::size_t i = 0; i < resolved.kinds.size(); ++i) {
      const LayerKind& kind = resolved.kinds[i];
      layer.kinds.push_back({kind.taxon->genus, kind.grade_cm, kind.taxon->height_to_diameter.value,
                             planned.bulbs[i].count});
    }
    layers.push_back(std::move(layer));
  }
  return layers;
}

}  // namespace

Materials add_materials(const PlanFacts& facts, Plan& plan) {
  const Materials materials = materials_for(facts.pot, material_layers(facts, plan),
                                            facts.request.pests, facts.request.wet_winter);
  PlanMaterials& planned = plan.materials;
  planned.mix_settled = materials.mix.settled;
  planned.mix_loose = materials.mix.loose;
  planned.perlite = materials.mix.perlite;
  planned.mix_by_step = materials.mix.by_step;
  if (materials.mesh) {
    planned.mesh_disc = materials.mesh->outline.length;
    planned.mesh_width = materials.mesh->outline.width;
    planned.mesh_opening = materials.mesh->opening;
    planned.pins = materials.mesh->pins;
  }
  planned.labels = materials.labels;
  planned.filled_weight = materials.weight.total;
  planned.filled_weight_low = materials.weight.low;
  planned.filled_weight_high = materials.weight.high;
  planned.shell_weight = materials.weight.shell;
  planned.lifting = to_string(materials.lift.verdict);
  planned.lift_one = materials.lift.one;
  planned.lift_two = materials.lift.two;
  return materials;
}

void add_shopping(const PlanFacts& facts, Plan& plan) {
  for (const PlannedLayer& layer : plan.layers) {
    for (const LayerBulbs& bulbs : layer.bulbs) {
      ShoppingNeed need;
      need.taxon = bulbs.taxon;
      need.name = bulbs.name;
      need.grade = bulbs.grade;
      need.label = bulbs.label;
      need.pot = facts.pot.name;
      need.layer = layer.level;
      need.need = bulbs.count;
      need.own = layer.own_count;
      if (!need.own) {
        need.spares = (bulbs.count + spare_divisor - 1) / spare_divisor;
        need.buy = need.need + need.spares;
      }
      plan.shopping.push_back(std::move(need));
    }
  }
}

void add_dates(const PlanFacts& facts, Plan& plan) {
  std::vector<CareKind> kinds;
  for (std::size_t i = 0; i < facts.kinds.size(); ++i) {
    kinds.push_back({facts.kinds[i].ask.taxon, facts.kinds[i].layer, facts.kinds[i].ask.available,
                     &plan.cold[i], &plan.waves[i], facts.timing.kinds[i].shoots,
                     facts.timing.kinds[i].bring_in});
  }
  plan.dates = care_dates({kinds, plan.plant, &facts.season.winters[facts.season.cold],
                           plan.materials.mesh_opening > Millimetres{0.0}});
}

}  // namespace bulbwright
