#pragma once

#include "catalogue/taxon.hpp"
#include "flowering/bloom.hpp"
#include "flowering/bloom_parameters.hpp"
#include "flowering/wave.hpp"

namespace bulbwright {

/// How sure the days of one wave are, and with them the days between two.

/// The causes of a wave's range. Added up they are the deviation that the range of a WaveForecast
/// is 1.28 times as wide as.
WaveDoubt doubt_of(const BloomParameters& kind, const Taxon& taxon, const WaveForecast& forecast,
                   double deeper_cm);

/// Standard deviation of the days between the first flowers of two waves of one pot:
///   s^2 = (winter_a - winter_b)^2 + (depth_a - depth_b)^2 + kind_a^2 + kind_b^2 + storage
/// The winter and the unknown size of the depth's effect move both at once, so that only their
/// difference counts; the garden is the same for both and drops out. Two kinds that were both
/// refrigerated share that doubt but for the part that is each kind's own. Of two layers of one
/// kind the kind's own doubt drops out too; layer_days of each remain.
double doubt_between(const PlannedWave& a, const PlannedWave& b);

/// What two layers of one kind differ by beside their depths, days. from memory
inline constexpr double layer_days = 1.5;

/// The chance that at least one day without a flower lies between two waves: of a normal
/// distribution about the predicted days between them, with the deviation of doubt_between(). How
/// long a wave lasts is taken as predicted.
double gap_chance(const PlannedWave& before, const PlannedWave& after);

/// The part of a kind's spread that is its own, not its garden's and year's. Chosen so that the
/// doubt between two kinds of one garden and year holds four in five of the dated pairs of
/// tests/vectors (`bloom_pairs` counts them: 80 % of 132; two tulips 80 % of 71, two small kinds
/// 83 % of 23). For tender kinds, of which there is no pair, all of it.
double own_share(const Taxon& taxon);

}  // namespace bulbwright
