#include "plan/wishes.hpp"

#include <algorithm>
#include <span>

#include "flowering/timing.hpp"
#include "layers/layering.hpp"
#include "layers/stack.hpp"
#include "plan/parts.hpp"
#include "scheduling/schedule.hpp"
#include "scheduling/spread.hpp"
#include "scheduling/wanted_day.hpp"

namespace bulbwright {
namespace {

/// Fixes the planting day, and the weeks of every kind that is not stored as usual on that day.
void fix(PotFile& request, Day plant, std::span<const double> weeks,
         std::span<const double> usual_weeks) {
  request.plant = plant;
  request.flower.reset();
  request.spread = false;
  std::size_t kind = 0;
  for (LayerRequest& layer : request.layers) {
    for (LayerPart& part : layer.parts) {
      if (weeks[kind] != usual_weeks[kind]) part.storage_weeks = weeks[kind];
      ++kind;
    }
  }
}

bool wishes_day(const PotFile& request) {
  return (request.flower && !request.plant) || request.spread;
}

void settle_day(Settled& settled, const PotSeason& season, const PlanContext& context) {
  PotFile& request = settled.request;
  const std::vector<ResolvedLayer> layers = resolve_layers(request.layers, *context.catalogue);
  const std::vector<TimedKind> kinds = timed_kinds(request, layers, context);
  if (request.flower) {
    const WantedAnswer answer = find_wanted_day(kinds, season, *request.flower);
    fix(request, answer.plant, answer.weeks, answer.usual_weeks);
    settled.wanted = WantedReport{answer.wanted,   answer.predicted, answer.open,
                                  answer.days_off, answer.met,       answer.limit};
    settled.notices = wanted_notices(answer);
  } else {
    const SpreadAnswer answer = find_spread(kinds, season, request.plant);
    fix(request, answer.plant, answer.weeks, answer.usual_weeks);
    settled.spread = answer.before;
    settled.notices = spread_notices(answer, kinds);
  }
}

/// What decides the place of each layer, when planted as the request says.
std::vector<OrderKey> order_keys(const PotFile& request, std::span<const ResolvedLayer> layers,
                                 const PotSeason& season, const PlanContext& context) {
  const std::vector<TimedKind> kinds = timed_kinds(request, layers, context);
  const Day plant =
      choose_planting(scheduled_kinds(kinds, season), season.view(), request.plant).plant;
  const Timing timing = time_pot(kinds, season, plant);
  std::vector<OrderKey> keys(layers.size());
  for (std::size_t i = 0; i < layers.size(); ++i) {
    for (const LayerKind& kind : layers[i].kinds) {
      keys[i].bulb_height = std::max(keys[i].bulb_height, kind.height);
      keys[i].season_class = std::max(keys[i].season_class, kind.taxon->season_class);
    }
  }
  for (const KindTiming& kind : timing.kinds) {
    OrderKey& key = keys[static_cast<std::size_t>(kind.wave.layer) - 1];
    key.peak = std::max(key.peak.value_or(kind.wave.peak), kind.wave.peak);
  }
  return keys;
}

void settle_order(Settled& settled, const Pot& pot, const PotSeason& season,
                  const PlanContext& context) {
  PotFile& request = settled.request;
  request.order = LayerOrder::given;
  const std::vector<ResolvedLayer> layers = resolve_layers(request.layers, *context.catalogue);
  const std::vector<std::size_t> order = order_layers(order_keys(request, layers, season, context));
  if (std::is_sorted(order.begin(), order.end())) return;
  std::vector<LayerRequest> requests;
  std::vector<ResolvedLayer> reordered;
  for (const std::size_t i : order) {
    requests.push_back(request.layers[i]);
    reordered.push_back(layers[i]);
  }
  if (!stack_of(reordered, pot).feasible && stack_of(layers, pot).feasible) {
    settled.notices.push_back({"order-kept", Severity::note,
                               "the latest kind lowest would not fit this pot: the layers lie as "
                               "they were listed"});
    return;
  }
  request.layers = std::move(requests);
}

}  // namespace

bool has_wish(const PotFile& request) {
  if (request.layers.empty()) return false;
  return wishes_day(request) || request.order == LayerOrder::by_flowering;
}

Settled settle(const PotFile& request, const PlanContext& context) {
  Settled settled;
  settled.request = request;
  if (!has_wish(request)) return settled;
  const Pot pot = make_pot(request.pot);
  const PotSeason season = pot_season(*context.setting, pot_thermal(pot));
  if (wishes_day(request)) settle_day(settled, season, context);
  if (request.order == LayerOrder::by_flowering) settle_order(settled, pot, season, context);
  return settled;
}

}  // namespace bulbwright
