#pragma once

#include "climate/place_season.hpp"
#include "cold/pot_temperature.hpp"

namespace bulbwright {

struct Taxon;

/// Hard frost of the mix against what bulbs stand.

/// lowest_in_frost() of a place's season: the same five days, from the months of its normal winter.
Celsius lowest_in_frost(const PlaceSeason& place_season, const PotThermal& pot);

/// What frost does to a kind planted in autumn.
struct FrostLimit {
  Celsius lethal{0.0};  ///< rooted bulbs die when their mix falls below
  /// Grows through the winter, with leaves: nothing is gained by letting it freeze a little, and
  /// the pot has to come in.
  bool tender = false;
};

/// Source: A. Sakai, "The frost-hardiness of bulbs and tubers", J. Japan. Soc. Hort. Sci. 29(3),
/// 1960, 233-238 (abstract): survived 24 hours at -15 to -18 muscari, -10 to -12 N. poeticus, -10
/// tulip and large crocus, -7 to -8 hyacinth, trumpet daffodil, Dutch iris and ixia, -3 to -4
/// freesia and moist anemone. Other hardy kinds as tulips, tender tazettas -5, sparaxis as freesia,
/// ranunculus as anemone: from memory. Tender kinds are those hardy from zone 8 or warmer alone.
FrostLimit frost_limit(const Taxon& taxon);

}  // namespace bulbwright
