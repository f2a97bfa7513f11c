#pragma once

#include <optional>
#include <span>

#include "flowering/timing.hpp"
#include "layers/layering.hpp"
#include "materials/materials.hpp"
#include "plan/context.hpp"
#include "plan/plan.hpp"
#include "plan/request.hpp"
#include "pot/pot.hpp"

namespace bulbwright {

/// The parts of make_plan() that only read what is planned already and add one thing to it.

/// Everything known when the parts are added.
struct PlanFacts {
  const Request& request;
  const PlanContext& context;
  const Pot& pot;
  std::span<const ResolvedLayer> layers;
  const PotSeason& season;
  std::span<const TimedKind> kinds;
  const Timing& timing;
  Celsius lowest_mix;  ///< in a usual year's hardest frost
};

Materials add_materials(const PlanFacts& facts, Plan& plan);
void add_shopping(const PlanFacts& facts, Plan& plan);
void add_dates(const PlanFacts& facts, Plan& plan);
/// Flowering order, company, used mix, frost, no winter, assumptions about the pot and the place.
void add_notices(const PlanFacts& facts, Plan& plan);
void add_cautions(const PlanFacts& facts, const Materials& materials, Plan& plan);

}  // namespace bulbwright
