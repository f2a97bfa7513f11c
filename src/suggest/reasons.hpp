#pragma once

#include <vector>

#include "catalogue/taxon.hpp"
#include "suggest/suggestion.hpp"

namespace bulbwright {

/// Why a stack is suggested, most telling first. `kinds` are those of its layers, bottom first.
std::vector<Remark> reasons_for(const Suggestion& suggestion, const SuggestionWish& wish,
                                const std::vector<const Taxon*>& kinds);

/// What to mind of these kinds in one pot.
std::vector<Notice> mind_for(const Suggestion& suggestion, const std::vector<const Taxon*>& kinds);

}  // namespace bulbwright
