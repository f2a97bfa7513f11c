#pragma once

#include <span>
#include <string>
#include <vector>

#include "base/calendar_day.hpp"
#include "base/quantity.hpp"
#include "catalogue/catalogue.hpp"
#include "season/season_pot.hpp"

namespace bulbwright {

/// Share of a bag that is bulb, the rest air: a little under spheres poured and not shaken, for
/// noses, necks and the folds of the bag. Source: G. D. Scott, "Packing of equal spheres", Nature
/// 188, 1960, 908-909 (0.60 poured, 0.64 shaken; from memory); 0.55: common practice
inline constexpr double bulb_share_of_bag = 0.55;

/// Room that a bag of so many bulbs takes in the refrigerator: their volume (bulb_volume.hpp) over
/// bulb_share_of_bag. `circumference_cm` above 0, `bulbs` 0 or more.
Litres bag_litres(double circumference_cm, double shape_factor, int bulbs);

/// The bulbs of one kind of one pot while they are cold: in on a day, out on the day of planting.
struct Bag {
  std::size_t pot = 0;  ///< index into the season's pots
  std::string taxon;
  std::string name;
  int bulbs = 0;  ///< spares included
  Litres litres;
  Day in;
  Day out;  ///< not in the refrigerator any more
  bool potted =
      false;           ///< chilled in its pot, which takes no room in a drawer; `litres` is the pot
  bool to_buy = true;  ///< else the grower's own, or bought cooled: nothing to buy otherwise
};

/// The bags of a plan that can be carried out, by day in, then as the layers lie: layers of one
/// kind with the same days share one. Bulbs that came cooled wait in the refrigerator too.
std::vector<Bag> bags_of(const Plan& plan, std::size_t pot, const Catalogue& catalogue);

}  // namespace bulbwright
