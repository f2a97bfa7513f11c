#include "flowering/doubt.hpp"

#include <cmath>

namespace bulbwright {
namespace {

/// Share of a normal distribution below `z` standard deviations.
double normal_share(double z) {
  return 0.5 * std::erfc(-z / std::sqrt(2.0));
}

/// Of two kinds of one pot, what storage adds to the days between them.
double storage_between(const WaveDoubt& a, const WaveDoubt& b) {
  if (a.storage <= 0.0 || b.storage <= 0.0) return std::hypot(a.storage, b.storage);
  const auto own = [](const WaveDoubt& doubt) {
    const double spread = std::hypot(doubt.kind, doubt.garden);
    return spread > 0.0 ? doubt.storage * doubt.kind / spread : doubt.storage;
  };
  return std::hypot(own(a), own(b));
}

}  // namespace

double own_share(const Taxon& taxon) {
  if (taxon.genus == "Tulipa") return 0.65;
  if (taxon.genus == "Narcissus") return 0.75;
  const bool tender = taxon.hardiness_min_zone >= 8;
  return tender ? 1.0 : 0.95;
}

WaveDoubt doubt_of(const BloomParameters& kind, const Taxon& taxon, const WaveForecast& forecast,
                   double deeper_cm) {
  const Wave& wave = forecast.wave;
  const double factor = wave.confidence == BloomConfidence::low ? low_confidence_factor : 1.0;
  const double own = own_share(taxon);
  WaveDoubt doubt;
  doubt.winter = factor * kind.winter_share * forecast.winters_days;
  doubt.kind = factor * kind.spread_days * own;
  doubt.garden = factor * kind.spread_days * std::sqrt(1.0 - own * own);
  doubt.storage = wave.stored_weeks >= 1.0 ? factor * kind.stored_spread_days : 0.0;
  doubt.depth = factor * depth_doubt * std::copysign(wave.depth_days, deeper_cm);
  return doubt;
}

double doubt_between(const PlannedWave& a, const PlannedWave& b) {
  const WaveDoubt &x = a.doubt, &y = b.doubt;
  const double together = std::hypot(x.winter - y.winter, x.depth - y.depth);
  if (a.taxon == b.taxon) return std::hypot(together, std::hypot(layer_days, layer_days));
  return std::hypot(together, std::hypot(std::hypot(x.kind, y.kind), storage_between(x, y)));
}

double gap_chance(const PlannedWave& before, const PlannedWave& after) {
  const double days = after.first - before.last - 1;
  const double doubt = doubt_between(before, after);
  // A whole day without a flower: half a day and more, rounded.
  if (doubt <= 0.0) return days >= 1.0 ? 1.0 : 0.0;
  return normal_share((days - 0.5) / doubt);
}

}  // namespace bulbwright
