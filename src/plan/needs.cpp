#include "plan/needs.hpp"

namespace bulbwright {

PotNeeds needs_of(const Plan& plan, const Catalogue& catalogue, std::string file) {
  PotNeeds needs;
  needs.pot = plan.pot.name;
  needs.file = std::move(file);
  needs.ok = plan.ok;
  for (const Notice& notice : plan.notices) {
    if (!needs.reason && notice.severity == Severity::refusal) needs.reason = notice;
  }
  needs.layers = static_cast<int>(plan.layers.size());
  for (const PlannedLayer& layer : plan.layers) {
    for (const LayerBulbs& bulbs : layer.bulbs) {
      const Taxon* taxon = catalogue.find(bulbs.taxon);
      needs.bulbs.push_back({bulbs.taxon, taxon ? taxon->genus : "", bulbs.name, bulbs.grade,
                             bulbs.label, layer.level, bulbs.count, layer.own});
    }
  }
  if (!plan.ok) return needs;  // nothing is bought for it
  needs.mix_loose = plan.materials.mix_loose;
  needs.mix = plan.materials.mix_loose - plan.materials.perlite;
  needs.perlite = plan.materials.perlite;
  needs.mesh = plan.materials.mesh_disc;
  needs.mesh_width = plan.materials.mesh_width;
  needs.mesh_opening = plan.materials.mesh_opening;
  needs.mesh_beneath = plan.materials.mesh_beneath;
  needs.mesh_beneath_width = plan.materials.mesh_beneath_width;
  needs.mesh_beneath_opening = plan.materials.mesh_beneath_opening;
  needs.pins = plan.materials.pins;
  needs.labels = plan.materials.labels;
  return needs;
}

}  // namespace bulbwright
