#include "suggest/exclusion.hpp"

#include <algorithm>

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

}  // namespace

Remark remark_of(Mouth mouth) {
  switch (mouth) {
    case Mouth::cats:
      return {RemarkCode::cats};
    case Mouth::dogs:
      return {RemarkCode::dogs};
    case Mouth::horses:
      return {RemarkCode::horses};
    case Mouth::people:
      break;
  }
  return {RemarkCode::people};
}

Remark remark_of(Pest pest) {
  switch (pest) {
    case Pest::gopher:
      return {RemarkCode::gophers};
    case Pest::vole:
      return {RemarkCode::voles};
    case Pest::mouse:
      return {RemarkCode::mice};
    case Pest::squirrel:
      return {RemarkCode::squirrels};
    case Pest::chipmunk:
      return {RemarkCode::chipmunks};
    case Pest::deer:
      break;
  }
  return {RemarkCode::deer};
}

Toxicity worst_for(const Taxon& taxon, const std::vector<Mouth>& mouths) {
  Toxicity worst = Toxicity::none_known;
  for (const Mouth mouth : mouths) worst = std::max(worst, toxicity_of(taxon, mouth));
  return worst;
}

std::optional<Remark> exclusion_of(const Taxon& taxon, const PotRequest& pot,
                                   const SuggestionWish& wish) {
  if (std::find(wish.without.begin(), wish.without.end(), taxon.id) != wish.without.end())
    return Remark{RemarkCode::not_wanted};
  const Taxon* const taxa[]{&taxon};
  if (!genera_refused(pot.last_crop, pot.used_mix, taxa).empty())
    return Remark{RemarkCode::genus_in_mix};
  for (const Mouth mouth : wish.safe_for) {
    const Toxicity toxicity = toxicity_of(taxon, mouth);
    if (toxicity == Toxicity::none_known) continue;
    return Remark{toxicity == Toxicity::unverified ? RemarkCode::not_known_harmless
                                                   : RemarkCode::poisonous_eaten,
                  {},
                  {{DetailName::mouths, std::vector<Remark>{remark_of(mouth)}}}};
  }
  for (const Pest pest : wish.not_eaten_by) {
    const Eaten eaten = eaten_by(taxon, pest);
    if (eaten == Eaten::rarely) continue;
    return Remark{eaten == Eaten::unknown ? RemarkCode::not_known_eaten : RemarkCode::eaten_by,
                  {},
                  {{DetailName::eaters, std::vector<Remark>{remark_of(pest)}}}};
  }
  return std::nullopt;
}

}  // namespace bulbwright
