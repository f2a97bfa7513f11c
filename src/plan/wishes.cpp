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
void fix(Request& request, Day plant, std::span<const double> weeks,
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

bool wishes_day(const Request& request) {
  return (request.flower && !request.plant) || request.spread;
}

void add(std::vector<Notice> notices, Settled& settled) {
  settled.notices.insert(settled.notices.begin(), notices.begin(), notices.end());
}

/// Where flowers come later than wanted for want of weeks in the cold: bulbs that have had them.
void offer_precooled(const WantedAnswer& answer, Settled& settled) {
  using enum RemarkCode;
  const bool too_late = answer.days_off > 0 && answer.limit &&
                        (answer.limit->code == limit_bulbs || answer.limit->code == limit_least ||
                         answer.limit->code == limits_together_earlier);
  if (!too_late) return;
  for (const TimedKind& kind : settled.pot_case.kinds) {
    if (is_chilled_kind(*kind.ask.taxon) && kind.ask.already_weeks <= 0.0)
      settled.notices.push_back(precooled_notice(*kind.ask.taxon, std::nullopt));
  }
}

void settle_day(Settled& settled, const PlanContext& context) {
  PotCase& asked = settled.pot_case;
  Request& request = asked.request;
  if (request.flower) {
    const WantedAnswer answer = find_wanted_day(asked.kinds, asked.season, *request.flower);
    fix(request, answer.plant, answer.weeks, answer.usual_weeks);
    settled.wanted = WantedReport{answer.wanted,   answer.predicted, answer.open,
                                  answer.days_off, answer.met,       answer.limit};
    add(wanted_notices(answer), settled);
    offer_precooled(answer, settled);
  } else {
    const SpreadAnswer answer = find_spread(asked.kinds, asked.season, request.plant);
    fix(request, answer.plant, answer.weeks, answer.usual_weeks);
    settled.spread = answer.before;
    add(spread_notices(answer, asked.kinds), settled);
  }
  set_layers(asked, request.layers, context);
}

/// What decides the place of each layer, when planted as the request says: what each would do at
/// its usual depth, so that the order asked for does not depend on the order given.
std::vector<OrderKey> order_keys(const PotCase& asked) {
  std::vector<TimedKind> kinds = asked.kinds;
  for (TimedKind& kind : kinds) kind.deeper_cm = 0.0;
  const Day plant = choose_planting(scheduled_kinds(kinds, asked.season), asked.season.view(),
                                    asked.request.plant)
                        .plant;
  const Timing timing = time_pot(kinds, asked.season, plant);
  std::vector<OrderKey> keys(asked.layers.size());
  for (std::size_t i = 0; i < asked.layers.size(); ++i) {
    for (const LayerKind& kind : asked.layers[i].kinds) {
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

/// The layers from the bottom up in the order of flowering; as they are, with a notice, where that
/// order does not fit the pot.
std::vector<std::size_t> flowering_order(const PotCase& asked, std::vector<Notice>& notices) {
  std::vector<std::size_t> order = order_layers(order_keys(asked));
  std::vector<ResolvedLayer> reordered;
  for (const std::size_t i : order) reordered.push_back(asked.layers[i]);
  if (!stack_of(reordered, asked.pot).feasible && stack_of(asked.layers, asked.pot).feasible) {
    notices.push_back({NoticeCode::order_kept, Severity::note});
    std::sort(order.begin(), order.end());
  }
  return order;
}

void lay(PotCase& asked, const std::vector<std::size_t>& order, const PlanContext& context) {
  asked.request.order = LayerOrder::given;
  if (std::is_sorted(order.begin(), order.end())) return;
  std::vector<LayerRequest> layers;
  for (const std::size_t i : order) layers.push_back(asked.request.layers[i]);
  set_layers(asked, std::move(layers), context);
}

/// The order at the day that the layers as they are listed lead to.
void settle_order(Settled& settled, const PlanContext& context) {
  std::vector<Notice> notices;
  std::vector<std::size_t> order;
  if (wishes_day(settled.pot_case.request)) {
    Settled listed = settled;
    settle_day(listed, context);
    order = flowering_order(listed.pot_case, notices);
  } else {
    order = flowering_order(settled.pot_case, notices);
  }
  lay(settled.pot_case, order, context);
  settled.notices = std::move(notices);
}

}  // namespace

bool has_wish(const Request& request) {
  if (request.layers.empty()) return false;
  return wishes_day(request) || request.order == LayerOrder::by_flowering;
}

Settled settle(PotCase asked, const PlanContext& context) {
  Settled settled{std::move(asked), {}, {}, {}};
  const Request& request = settled.pot_case.request;
  if (!has_wish(request)) return settled;
  if (request.order == LayerOrder::by_flowering) settle_order(settled, context);
  if (wishes_day(request)) settle_day(settled, context);
  return settled;
}

}  // namespace bulbwright
