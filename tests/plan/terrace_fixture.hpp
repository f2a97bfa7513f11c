#pragma once

#include "catalogue/catalogue.hpp"
#include "climate/place.hpp"
#include "climate/place_season.hpp"
#include "flowering/bloom_parameters.hpp"
#include "flowering/timing.hpp"
#include "plan/planner.hpp"
#include "plan/request.hpp"

/// Real places, kinds and the three-layer pot of the terrace of Saltmarsh Lane Library, for tests
/// of what plans and searches do with them.
namespace bulbwright::terrace {

inline const Catalogue& catalogue() {
  static const Catalogue taxa = builtin_catalogue();
  return taxa;
}

inline const BloomTable& blooms() {
  static const BloomTable figures = BloomTable::builtin();
  return figures;
}

inline const PlaceCatalogue& places() {
  static const PlaceCatalogue known = PlaceCatalogue::builtin();
  return known;
}

inline PlaceSeason setting_of(const char* zone) {
  return season_at_place(places().zone_profile(zone), 2026, Exposure::open);
}

/// A station by its name, season 2026.
inline PlaceSeason setting_of_site(const char* name) {
  return season_at_place(places().find(name), 2026, Exposure::open);
}

inline PotSeason season_of(const PlaceSeason& place_season) {
  return pot_season(place_season, pot_thermal(example_pot()));
}

inline PotSeason season_of_zone(const char* zone) {
  return season_of(setting_of(zone));
}

inline TimedKind kind_of(const char* id, int layer = 1, Hemisphere hemisphere = Hemisphere::north) {
  TimedKind kind;
  kind.ask.taxon = &catalogue().at(id);
  kind.bloom = blooms().of(*kind.ask.taxon);
  kind.ask.available = earliest_bulbs(2026, hemisphere);
  if (kind.ask.taxon->refrigerator_temp_c)
    kind.ask.storage_temperature = Celsius{kind.ask.taxon->refrigerator_temp_c->value};
  kind.layer = layer;
  return kind;
}

/// 380 mm across and 360 mm high, these kinds from the bottom up.
inline Request terrace_pot(std::initializer_list<const char*> kinds = {
                               "tulip-triumph", "narcissus-large-cupped", "crocus-large"}) {
  Request request;
  request.pot.top = LengthPair{Millimetres{380.0}, Millimetres{380.0}, false};
  request.pot.height = Millimetres{360.0};
  for (const char* id : kinds) {
    LayerRequest layer;
    layer.parts.push_back({id, 1.0});
    request.layers.push_back(layer);
  }
  return request;
}

/// What plans of a place's season are made from; the place's season must outlive it.
struct Bench {
  explicit Bench(const PlaceSeason& where) : place_season{&where} {}
  [[nodiscard]] PlanContext context() {
    return {catalogue(), blooms(), *place_season, Effort::quick, packings};
  }
  const PlaceSeason* place_season;
  PackingCache packings;
};

}  // namespace bulbwright::terrace
