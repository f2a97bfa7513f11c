#include "catalogue/kind_filter.hpp"

#include <algorithm>

namespace bulbwright {
namespace {

bool has_cold(const Taxon& taxon, ColdWish wish) {
  switch (wish) {
    case ColdWish::none:
      return taxon.outdoor_cold_weeks.low <= 0.0;
    case ColdWish::dry_ok:
      return taxon.cold_form == ColdForm::dry_ok;
    case ColdWish::moist_only:
      break;
  }
  return taxon.cold_form == ColdForm::moist_only;
}

}  // namespace

bool KindFilter::is_open() const {
  return !cold && eaten_by.empty() && not_eaten_by.empty() && !least_height && !most_height;
}

bool passes(const Taxon& taxon, const KindFilter& filter) {
  if (filter.cold && !has_cold(taxon, *filter.cold)) return false;
  const bool eaten = std::all_of(filter.eaten_by.begin(), filter.eaten_by.end(), [&](Pest pest) {
    const Eaten how = eaten_by(taxon, pest);
    return how == Eaten::eaten || how == Eaten::occasionally;
  });
  const bool spared =
      std::all_of(filter.not_eaten_by.begin(), filter.not_eaten_by.end(),
                  [&](Pest pest) { return eaten_by(taxon, pest) == Eaten::rarely; });
  const Millimetres height{10.0 * taxon.height_cm.value};
  return eaten && spared && (!filter.least_height || height >= *filter.least_height) &&
         (!filter.most_height || height <= *filter.most_height);
}

}  // namespace bulbwright
