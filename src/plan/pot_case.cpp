#include "plan/pot_case.hpp"

#include <algorithm>

#include "layers/planting_depth.hpp"
#include "scheduling/storage_weeks.hpp"

namespace bulbwright {
namespace {

/// One refrigerator serves all kinds of a pot: at 5 degC (common practice), or as near as a kind
/// takes.
Celsius usual_refrigerator(const Taxon& taxon) {
  constexpr double usual_c = 5.0;
  const auto& limits = taxon.refrigerator_temp_c;
  return Celsius{limits ? std::clamp(usual_c, limits->low, limits->high) : usual_c};
}

std::vector<TimedKind> timed_kinds(const StorageRequest& storage,
                                   std::span<const ResolvedLayer> layers,
                                   const PlanContext& context) {
  const PlaceSeason& place_season = context.place_season;
  std::vector<TimedKind> kinds;
  for (std::size_t i = 0; i < layers.size(); ++i) {
    for (std::size_t j = 0; j < layers[i].kinds.size(); ++j) {
      const LayerKind& kind = layers[i].kinds[j];
      const LayerPart& part = layers[i].request.parts[j];
      TimedKind timed;
      timed.layer = static_cast<int>(i) + 1;
      timed.ask.taxon = kind.taxon;
      timed.bloom = context.blooms.of(*kind.taxon);
      timed.ask.use = layers[i].request.use;
      timed.ask.already_weeks = layers[i].request.cold_already_weeks;
      timed.ask.fixed_weeks = part.storage_weeks ? part.storage_weeks : storage.weeks;
      timed.state = layers[i].request.state;
      if (timed.state != BulbState::dry) timed.ask.fixed_weeks = 0.0;  // no bag, no refrigerator
      if (timed.state == BulbState::in_growth && timed.ask.already_weeks <= 0.0)
        timed.ask.already_weeks = need_for(*kind.taxon, timed.ask.use).recommended;
      timed.ask.storage_temperature = usual_refrigerator(*kind.taxon);
      if (storage.temperature) timed.ask.storage_temperature = *storage.temperature;
      timed.ask.received = layers[i].request.received.has_value();
      timed.ask.available = layers[i].request.received.value_or(
          earliest_bulbs(place_season.season, place_season.hemisphere));
      timed.ask.late_from = late_planting_from(place_season.season, place_season.hemisphere,
                                               place_season.frost.annual_low);
      timed.ask.stored_from = stored_planting_from(place_season.season, place_season.hemisphere,
                                                   place_season.frost.annual_low);
      timed.ask.never_for_a_wish = !timed.ask.stored_from && timed.ask.use == Use::outdoors;
      kinds.push_back(timed);
    }
  }
  return kinds;
}

}  // namespace

PotCase make_case(const Request& request, const PlanContext& context) {
  PotCase made{request, make_pot(request.pot), {}, {}, {}};
  made.season = pot_season(context.place_season, pot_thermal(made.pot));
  for (std::size_t i = 0; i < made.request.layers.size(); ++i) made.request.layers[i].listed_at = i;
  set_layers(made, made.request.layers, context);
  return made;
}

void set_layers(PotCase& pot_case, std::vector<LayerRequest> layers, const PlanContext& context) {
  pot_case.request.layers = std::move(layers);
  pot_case.layers = resolve_layers(pot_case.request.layers, context.catalogue);
  pot_case.kinds = timed_kinds(pot_case.request.storage, pot_case.layers, context);
  for (TimedKind& kind_of_layer : pot_case.kinds)
    kind_of_layer.ask.by_week = season_storage(kind_of_layer, pot_case.season);
  std::size_t kind = 0;
  for (const std::vector<int>& layer :
       deeper_than_usual_cm(pot_case.layers, stack_of(pot_case.layers, pot_case.pot))) {
    for (const int cm : layer) pot_case.kinds[kind++].deeper_cm = cm;
  }
}

}  // namespace bulbwright
