#include "suggest/exclusion.hpp"

#include <algorithm>

#include <fmt/core.h>

#include "materials/used_mix.hpp"

namespace bulbwright {
namespace {

Toxicity toxicity_of(const Taxon& taxon, Mouth mouth) {
  switch (mouth) {
    case Mouth::cats:
      return taxon.toxicity_cat;
    case Mouth::dogs:
      return taxon.toxicity_dog;
    case Mouth::horses:
      return taxon.toxicity_horse;
    case Mouth::people:
      return taxon.toxicity_people;
  }
  return Toxicity::unverified;
}

Eaten eaten_by(const Taxon& taxon, Eater eater) {
  switch (eater) {
    case Eater::deer:
      return taxon.deer;
    case Eater::gopher:
      return taxon.gopher;
    case Eater::squirrel:
      return taxon.squirrel;
    case Eater::vole:
      return taxon.vole;
  }
  return Eaten::unknown;
}

}  // namespace

const char* to_string(Mouth mouth) {
  switch (mouth) {
    case Mouth::cats:
      return "cats";
    case Mouth::dogs:
      return "dogs";
    case Mouth::horses:
      return "horses";
    case Mouth::people:
      return "people";
  }
  return "";
}

const char* to_string(Eater eater) {
  switch (eater) {
    case Eater::deer:
      return "deer";
    case Eater::gopher:
      return "gophers";
    case Eater::squirrel:
      return "squirrels";
    case Eater::vole:
      return "voles";
  }
  return "";
}

Toxicity worst_for(const Taxon& taxon, const std::vector<Mouth>& mouths) {
  Toxicity worst = Toxicity::none_known;
  for (const Mouth mouth : mouths) worst = std::max(worst, toxicity_of(taxon, mouth));
  return worst;
}

std::string exclusion_of(const Taxon& taxon, const PotRequest& pot, const SuggestionWish& wish) {
  if (std::find(wish.without.begin(), wish.without.end(), taxon.id) != wish.without.end())
    return "not wanted";
  const std::string genera[]{taxon.genus};
  if (!genera_refused(pot.last_crop, pot.used_mix, genera).empty())
    return "the mix held its genus last year";
  for (const Mouth mouth : wish.safe_for) {
    switch (toxicity_of(taxon, mouth)) {
      case Toxicity::none_known:
        break;
      case Toxicity::unverified:
        return fmt::format("not known to be harmless to {}", to_string(mouth));
      case Toxicity::mild:
      case Toxicity::moderate:
      case Toxicity::severe:
        return fmt::format("poisonous to {} when eaten", to_string(mouth));
    }
  }
  for (const Eater eater : wish.not_eaten_by) {
    const Eaten eaten = eaten_by(taxon, eater);
    if (eaten == Eaten::rarely) continue;
    return eaten == Eaten::unknown ? fmt::format("not known whether {} eat it", to_string(eater))
                                   : fmt::format("eaten by {}", to_string(eater));
  }
  return {};
}

}  // namespace bulbwright
