#pragma once

#include <string>
#include <vector>

#include "catalogue/taxon.hpp"
#include "suggest/suggestion.hpp"

namespace bulbwright {

/// Why a stack is suggested, for people, most telling first; what to mind at the end. `kinds` are
/// those of its layers, bottom first.
std::vector<std::string> reasons_for(const Suggestion& suggestion, const SuggestionWish& wish,
                                     const std::vector<const Taxon*>& kinds);

}  // namespace bulbwright
