#include "bulbwright/settled.hpp"

#include <span>

#include "bulbwright/layering.hpp"
#include "bulbwright/timing.hpp"
#include "bulbwright/wanted_day.hpp"
#include "plan_parts.hpp"

namespace bulbwright {
namespace {

/// Fixes the planting day, and the weeks of every kind that is not stored as usual on that day.
void fix(PotFile& request, Day plant, std::span<const double> weeks,
         std::span<const double> usual_weeks) {
  request.plant = plant;
  request.flower.reset();
  std::size_t kind = 0;
  for (LayerRequest& layer : request.layers) {
    for (LayerPart& part : layer.parts) {
      if (weeks[kind] != usual_weeks[kind]) part.storage_weeks = weeks[kind];
      ++kind;
    }
  }
}

}  // namespace

bool has_wish(const PotFile& request) {
  return request.flower && !request.plant && !request.layers.empty();
}

Settled settle(const PotFile& request, const PlanContext& context) {
  const Pot pot = make_pot(request.pot);
  const std::vector<ResolvedLayer> layers = resolve_layers(request.layers, *context.catalogue);
  const PotSeason season = pot_season(*context.setting, thermal_of(pot, pot.material));
  const std::vector<TimedKind> kinds = timed_kinds(request, layers, context);
  const WantedAnswer answer = find_wanted_day(kinds, season, *request.flower);

  Settled settled;
  settled.request = request;
  fix(settled.request, answer.plant, answer.weeks, answer.usual_weeks);
  settled.wanted = WantedReport{answer.wanted,   answer.predicted, answer.open,
                                answer.days_off, answer.met,       answer.limit};
  settled.notices = wanted_notices(answer);
  return settled;
}

}  // namespace bulbwright
