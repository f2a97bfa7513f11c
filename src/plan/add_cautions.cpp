#include <algorithm>

#include "caution/caution.hpp"
#include "plan/parts.hpp"
#include "pot/pot_material.hpp"

namespace bulbwright {
namespace {

constexpr double mild_zone_low_c = -6.7;  ///< zone 9 and up. Source: USDA Plant Hardiness Zone Map

}  // namespace

void add_cautions(const PlanFacts& facts, const Materials& materials, Plan& plan) {
  CautionFacts caution;
  for (const TimedKind& kind : facts.kinds) caution.taxa.push_back(kind.ask.taxon);
  caution.refrigerated = std::any_of(plan.cold.begin(), plan.cold.end(), [](const TaxonCold& cold) {
    return cold.storage_weeks > 0.0 && !cold.chilled_in_pot;
  });
  caution.pre_cooled = std::any_of(plan.cold.begin(), plan.cold.end(),
                                   [](const TaxonCold& cold) { return cold.already_weeks > 0.0; });
  caution.storage_method = facts.request.storage.method.value_or("");
  const PotWinter& cold = facts.season.winters[facts.season.cold];
  caution.frost_expected = lowest(cold, plan.plant, cold.last()) < Celsius{0.0};
  caution.mild_winter = facts.context.place_season.frost.annual_low >= Celsius{mild_zone_low_c};
  const auto material = find_material(plan.pot.material);
  caution.cracks_in_frost = material && material->cracks_in_frost;
  caution.wall_pot = facts.pot.shape == Shape::half_round;
  caution.mesh = materials.mesh.has_value() || materials.mesh_beneath.has_value();
  caution.perlite_share =
      materials.mix.loose.value() > 0.0 ? materials.mix.perlite / materials.mix.loose : 0.0;
  caution.filled_weight = materials.weight.total;
  caution.lift_one = materials.lift.one;
  caution.volume = plan.pot.volume;
  caution.pests = facts.request.pests;
  const auto& rules = facts.context.cautions;
  plan.cautions = rules.empty() ? cautions_for(caution) : cautions_for(caution, rules);
}

}  // namespace bulbwright
