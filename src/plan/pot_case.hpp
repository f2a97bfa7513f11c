#pragma once

#include <span>
#include <vector>

#include "flowering/timing.hpp"
#include "layers/layering.hpp"
#include "plan/context.hpp"
#include "plan/request.hpp"
#include "pot/pot.hpp"

namespace bulbwright {

/// A request with what follows from it before any day is chosen: found once, for the wishes and for
/// the plan.
struct PotCase {
  Request request;
  Pot pot;
  PotSeason season;                   ///< the winters as this pot's mix feels them
  std::vector<ResolvedLayer> layers;  ///< of the request
  /// Every kind of every layer, bottom layer first, at the depth that it has in this pot.
  std::vector<TimedKind> kinds;
};

/// @throws InvalidValue for a pot or a taxon that cannot be.
PotCase make_case(const Request& request, const PlanContext& context);

/// Puts other layers into a case, or the same in another order; pot and season stay.
void set_layers(PotCase& pot_case, std::vector<LayerRequest> layers, const PlanContext& context);

}  // namespace bulbwright
