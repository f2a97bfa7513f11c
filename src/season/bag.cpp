#include "season/bag.hpp"

#include <algorithm>
#include <numbers>

#include "materials/bulb_volume.hpp"

namespace bulbwright {
namespace {

/// A kind in a layer with its bulbs, as they go into the bag.
struct Stored {
  int bulbs = 0;
  Litres litres;
  bool to_buy = true;
};

Stored stored_of(const Plan& plan, const PlannedDate& date, const Catalogue& catalogue) {
  Stored stored;
  const std::string& id = date.kinds.front().taxon;
  const Taxon* taxon = catalogue.find(id);
  for (const ShoppingNeed& need : plan.shopping) {
    if (need.layer != date.layer || need.taxon != id) continue;
    stored.bulbs += need.own ? need.need : need.buy;
    stored.to_buy = stored.to_buy && !need.own;
  }
  for (const TaxonCold& cold : plan.cold) {
    if (cold.taxon == id && cold.already_weeks > 0.0) stored.to_buy = false;
  }
  const auto layer =
      std::find_if(plan.layers.begin(), plan.layers.end(),
                   [&](const PlannedLayer& planned) { return planned.level == date.layer; });
  if (layer == plan.layers.end() || taxon == nullptr) return stored;
  for (const LayerBulbs& bulbs : layer->bulbs) {
    if (bulbs.taxon != id) continue;
    const double girth_cm = bulbs.diameter.value() * std::numbers::pi / 10.0;
    stored.litres = bag_litres(
        girth_cm, shape_factor(taxon->genus_facts.shape_factor, taxon->height_to_diameter.value),
        stored.bulbs);
  }
  return stored;
}

}  // namespace

Litres bag_litres(double circumference_cm, double shape_factor, int bulbs) {
  return bulbs * bulb_volume(circumference_cm, shape_factor) / bulb_share_of_bag;
}

std::vector<Bag> bags_of(const Plan& plan, std::size_t pot, const Catalogue& catalogue) {
  std::vector<Bag> bags;
  for (const PlannedDate& date : plan.dates) {
    const bool potted = date.task == Task::pot_and_chill;
    if ((!potted && date.task != Task::storage_start) || date.kinds.empty() || !date.until)
      continue;
    const Stored stored = stored_of(plan, date, catalogue);
    const KindName& kind = date.kinds.front();
    const auto same = std::find_if(bags.begin(), bags.end(), [&](const Bag& bag) {
      return bag.taxon == kind.taxon && bag.in == date.date && bag.out == *date.until &&
             bag.potted == potted && bag.to_buy == stored.to_buy;
    });
    if (same != bags.end()) {
      same->bulbs += stored.bulbs;
      if (!potted) same->litres += stored.litres;
      continue;
    }
    bags.push_back({pot, kind.taxon, kind.name, stored.bulbs,
                    potted ? plan.pot.volume : stored.litres, date.date, *date.until, potted,
                    stored.to_buy});
  }
  return bags;
}

}  // namespace bulbwright
