#pragma once

#include <string>
#include <vector>

#include "catalogue/taxon.hpp"
#include "pot/pot_request.hpp"
#include "suggest/wish.hpp"

namespace bulbwright {

/// Why a kind is out whatever the winter: the grower's wish, or what the mix held last year. In
/// words; empty where nothing speaks against it.
std::string exclusion_of(const Taxon& taxon, const PotRequest& pot, const SuggestionWish& wish);

/// The worst that an eaten bulb does to any of them.
Toxicity worst_for(const Taxon& taxon, const std::vector<Mouth>& mouths);

template <class Word>
std::vector<std::string> names_of(const std::vector<Word>& words) {
  std::vector<std::string> names;
  for (const Word word : words) names.emplace_back(to_string(word));
  return names;
}

}  // namespace bulbwright
