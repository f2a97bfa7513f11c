#pragma once

#include <span>
#include <vector>

#include "catalogue/catalogue.hpp"
#include "caution/caution.hpp"
#include "season/season_pot.hpp"

namespace bulbwright {

/// The cautions of all pots, each said once: those rules that spoke of some pot, of all kinds and
/// animals together, with the heaviest pot's weight.
std::vector<Caution> season_cautions(std::span<const SeasonPot> pots, const Catalogue& catalogue,
                                     std::span<const CautionRule> rules);

}  // namespace bulbwright
