#include "season/season_cautions.hpp"

#include <algorithm>
#include <set>
#include <string>

namespace bulbwright {
namespace {

/// Facts under which every rule that spoke of a pot speaks again.
CautionFacts facts_of(std::span<const SeasonPot> pots, const Catalogue& catalogue) {
  CautionFacts facts;
  facts.refrigerated = facts.pre_cooled = facts.frost_expected = facts.mild_winter = true;
  facts.cracks_in_frost = facts.wall_pot = facts.mesh = true;
  std::set<std::string> kinds, methods;
  std::set<Pest> pests;
  for (const SeasonPot& pot : pots) {
    if (!pot.ok()) continue;
    const Plan& plan = *pot.plan;
    for (const TaxonCold& cold : plan.cold) kinds.insert(cold.taxon);
    if (plan.request.storage.method) methods.insert(*plan.request.storage.method);
    pests.insert(plan.request.pests.begin(), plan.request.pests.end());
    const PlanMaterials& materials = plan.materials;
    if (materials.perlite > Litres{0.0})
      facts.perlite_share = std::max(facts.perlite_share, materials.perlite / materials.mix_loose);
    facts.volume = std::max(facts.volume, plan.pot.volume);
    if (materials.filled_weight <= facts.filled_weight) continue;
    facts.filled_weight = materials.filled_weight;
    facts.lift_one = materials.lift_one;
  }
  for (const std::string& kind : kinds) {
    if (const Taxon* taxon = catalogue.find(kind)) facts.taxa.push_back(taxon);
  }
  for (const std::string& method : methods) facts.storage_method += method + " ";
  facts.pests.assign(pests.begin(), pests.end());
  return facts;
}

}  // namespace

std::vector<Caution> season_cautions(std::span<const SeasonPot> pots, const Catalogue& catalogue,
                                     std::span<const CautionRule> rules) {
  std::set<std::string> codes;
  for (const SeasonPot& pot : pots) {
    if (!pot.ok()) continue;
    for (const Caution& caution : pot.plan->cautions) codes.insert(caution.code);
  }
  std::vector<CautionRule> spoken;
  for (const CautionRule& rule : rules) {
    if (codes.contains(rule.caution.code)) spoken.push_back(rule);
  }
  if (spoken.empty()) return {};
  return cautions_for(facts_of(pots, catalogue), spoken);
}

}  // namespace bulbwright
