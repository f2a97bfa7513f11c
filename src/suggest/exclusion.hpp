#pragma once

#include <optional>
#include <vector>

#include "catalogue/taxon.hpp"
#include "pot/pot_request.hpp"
#include "suggest/wish.hpp"

namespace bulbwright {

/// Why a kind is out whatever the winter: the grower's wish, or what the mix held last year.
/// Nothing where nothing speaks against it.
std::optional<Remark> exclusion_of(const Taxon& taxon, const PotRequest& pot,
                                   const SuggestionWish& wish);

/// The worst that an eaten bulb does to any of them.
Toxicity worst_for(const Taxon& taxon, const std::vector<Mouth>& mouths);

}  // namespace bulbwright
