#include "materials/used_mix.hpp"

#include <algorithm>

#include "base/text.hpp"

namespace bulbwright {

std::vector<std::string> genera_refused(const std::optional<std::string>& last_crop, bool used_mix,
                                        std::span<const Taxon* const> taxa) {
  std::vector<std::string> refused;
  if (!last_crop || !used_mix) return refused;
  for (const Taxon* taxon : taxa) {
    std::string genus = lower_case(taxon->genus);
    if (!is_crop_of(taxon->genus_facts, *last_crop)) continue;
    if (std::find(refused.begin(), refused.end(), genus) == refused.end()) {
      refused.push_back(std::move(genus));
    }
  }
  return refused;
}

}  // namespace bulbwright
