#pragma once

#include "plan/context.hpp"
#include "plan/plan.hpp"
#include "plan/request.hpp"

namespace bulbwright {

/// One pot from request to whole answer: layers, cold, planting day, waves, materials, what to do
/// and what to beware of. A plan that cannot be carried out is an answer too: ok is false, the
/// reason is a notice of severity refusal, and what is known is filled in.
/// @throws InvalidValue for a pot or a taxon that cannot be (the readers check most of it before).
Plan make_plan(const Request& request, const PlanContext& context);

}  // namespace bulbwright
