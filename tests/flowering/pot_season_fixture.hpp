#pragma once

#include "catalogue/catalogue.hpp"
#include "flowering/timing.hpp"

namespace bulbwright::fixture {

/// The catalogue, parsed once.
inline const Catalogue& catalogue() {
  static const Catalogue known = builtin_catalogue();
  return known;
}

/// Three winters of one temperature each, in a pot that follows the air: what a test says is what
/// is.
inline PotSeason steady_season(double normal_c, double mild_c, double cold_c) {
  PlaceSeason place_season;
  place_season.season = 2026;
  place_season.latitude = 45.0;
  place_season.mild = 1;
  place_season.cold = 2;
  const DayWindow days = winter_days(2026, Hemisphere::north);
  for (const double t : {normal_c, mild_c, cold_c}) {
    Winter winter;
    winter.name = "steady";
    winter.latitude = place_season.latitude;
    winter.first = days.first;
    winter.days.assign(static_cast<std::size_t>(days.last - days.first) + 1,
                       DayExtremes{t - 0.01, t + 0.01, false});
    place_season.winters.push_back(winter);
  }
  return pot_season(place_season, pot_thermal(example_pot()));
}

inline TimedKind kind_of(const char* taxon) {
  TimedKind kind;
  kind.ask.taxon = catalogue().find(taxon);
  kind.ask.available = earliest_bulbs(2026, Hemisphere::north);
  kind.bloom = BloomTable::builtin().of(*kind.ask.taxon);
  return kind;
}

}  // namespace bulbwright::fixture
