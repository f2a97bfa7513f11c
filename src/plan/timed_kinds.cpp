// What make_plan() and its searches ask of timing.
#include <algorithm>

#include "plan/parts.hpp"

namespace bulbwright {
namespace {

/// One refrigerator serves all kinds of a pot: at 5 degC (common practice), or as near as a kind
/// takes.
Celsius usual_refrigerator(const Taxon& taxon) {
  constexpr double usual_c = 5.0;
  const auto& limits = taxon.refrigerator_temp_c;
  return Celsius{limits ? std::clamp(usual_c, limits->low, limits->high) : usual_c};
}

}  // namespace

std::vector<TimedKind> timed_kinds(const PotFile& request, std::span<const ResolvedLayer> layers,
                                   const PlanContext& context) {
  const Setting& setting = *context.setting;
  std::vector<TimedKind> kinds;
  for (std::size_t i = 0; i < layers.size(); ++i) {
    for (std::size_t j = 0; j < layers[i].kinds.size(); ++j) {
      const LayerKind& kind = layers[i].kinds[j];
      const LayerPart& part = layers[i].request->parts[j];
      TimedKind timed;
      timed.layer = static_cast<int>(i) + 1;
      timed.ask.taxon = kind.taxon;
      timed.bloom = context.blooms->of(*kind.taxon);
      timed.ask.use = layers[i].request->use;
      timed.ask.already_weeks = layers[i].request->cold_already_weeks;
      timed.ask.fixed_weeks = part.storage_weeks ? part.storage_weeks : request.storage.weeks;
      timed.ask.storage_temperature = usual_refrigerator(*kind.taxon);
      if (request.storage.temperature) timed.ask.storage_temperature = *request.storage.temperature;
      timed.ask.available =
          layers[i].request->received.value_or(earliest_bulbs(setting.season, setting.hemisphere));
      kinds.push_back(timed);
    }
  }
  return kinds;
}

}  // namespace bulbwright
