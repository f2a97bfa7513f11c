#pragma once

#include <optional>
#include <span>
#include <vector>

#include "catalogue/bulb_state.hpp"
#include "catalogue/taxon.hpp"
#include "cold/pot_temperature.hpp"
#include "plan/plan.hpp"

namespace bulbwright {

/// One kind of the plan, as far as the year's work depends on it.
struct CareKind {
  const Taxon* taxon = nullptr;
  int layer = 1;
  const TaxonCold* cold = nullptr;
  const PlannedWave* wave = nullptr;
  Day shoots;                   ///< first noses
  std::optional<Day> bring_in;  ///< forcing: from the cold to a light room
  BulbState state = BulbState::dry;
  bool at_hand = false;              ///< the grower's own, or received: nothing to order
  std::optional<Day> cooled_from{};  ///< came refrigerated on this day, and stays so to planting
};

struct CareFacts {
  std::span<const CareKind> kinds;
  Day plant;
  const PotWinter* cold_winter = nullptr;  ///< for shelter from frost
  bool mesh = false;                       ///< a disc lies on the mix
  WinterRain winter = WinterRain::ordinary;
  std::optional<Day> bulbs_from{};  ///< first day on which bulbs are to be had
  Celsius lowest_mix{0.0};          ///< in a usual year's hardest frost
  bool bulbs_last = false;          ///< long winters, or cool summers: see after_here()
};

/// What pays after flowering, at a place: a kind that had to be refrigerated, or was forced, is an
/// annual there; where bulbs last and the winter gave its cold a kind is kept that mild winters and
/// hot summers wear out; else as the catalogue says. common practice
AfterFlowering after_here(const CareKind& kind, bool bulbs_last);

/// Bulbs last where winters are those of zone 7 or colder, or where no month's mix is as warm as 23
/// degC in the mean. common practice: tulips and trumpet daffodils come back in the north and on
/// cool coasts, not in the American South
bool bulbs_last(Celsius annual_low, std::span<const double> mix_mean_c);

/// What is to be done or seen, in order of days: ordering, refrigerating and checking, planting,
/// winter care by its rain (docs/pot-and-stack.md), shoots, flowers and afterwards. Bulbs are
/// ordered before named sorts are sold out (end of July, end of January in the south) and four
/// weeks before they are needed; sheltered on the days whose mix a usual year's hardest frost
/// would bring below hurtful_frost. common practice
std::vector<PlannedDate> care_dates(const CareFacts& facts);

}  // namespace bulbwright
