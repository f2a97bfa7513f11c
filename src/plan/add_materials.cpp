#include <cmath>
#include <set>

#include "cold/hard_frost.hpp"
#include "plan/care_dates.hpp"
#include "plan/parts.hpp"
#include "shopping/spares.hpp"

namespace bulbwright {
namespace {

std::vector<MaterialsLayer> material_layers(const PlanFacts& facts, const Plan& plan) {
  std::vector<MaterialsLayer> layers;
  for (const PlannedLayer& planned : plan.layers) {
    const ResolvedLayer& resolved = facts.layers[static_cast<std::size_t>(planned.level - 1)];
    MaterialsLayer layer;
    layer.base = planned.above_floor;
    for (std::size_t i = 0; i < resolved.kinds.size(); ++i) {
      const LayerKind& kind = resolved.kinds[i];
      layer.kinds.push_back({kind.taxon->genus_facts.shape_factor, kind.grade_cm,
                             kind.taxon->height_to_diameter.value, planned.bulbs[i].count});
    }
    layers.push_back(std::move(layer));
  }
  return layers;
}

}  // namespace

Materials add_materials(const PlanFacts& facts, Plan& plan) {
  const Materials materials =
      materials_for(facts.pot, material_layers(facts, plan), facts.request.pests,
                    plan.place.winter == WinterRain::wet);
  plan.materials = plan_materials(materials);
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
      need.own = layer.own;
      plan.shopping.push_back(std::move(need));
    }
  }
  add_spares(plan.shopping, flat_loss_rate);
}

void add_dates(const PlanFacts& facts, Plan& plan) {
  std::vector<CareKind> kinds;
  for (std::size_t i = 0; i < facts.kinds.size(); ++i) {
    const TimedKind& kind = facts.kinds[i];
    const LayerRequest& asked = facts.layers[static_cast<std::size_t>(kind.layer - 1)].request;
    CareKind care{kind.ask.taxon,
                  kind.layer,
                  &plan.cold[i],
                  &plan.waves[i],
                  facts.timing.kinds[i].shoots,
                  facts.timing.kinds[i].bring_in,
                  kind.state,
                  asked.own || asked.received.has_value(),
                  {}};
    if (kind.ask.already_weeks > 0.0) care.cooled_from = asked.received.value_or(plan.plant - 7);
    kinds.push_back(care);
  }
  plan.dates =
      care_dates({kinds, plan.plant, &facts.season.winters[facts.season.cold],
                  plan.materials.mesh_opening > Millimetres{0.0}, plan.place.winter,
                  earliest_bulbs(facts.season.season, facts.season.hemisphere), facts.lowest_mix,
                  bulbs_last(facts.context.place_season.frost.annual_low, plan.place.mix_mean_c)});
}

}  // namespace bulbwright
