#pragma once

#include "bulbwright/bloom_parameters.hpp"
#include "bulbwright/catalogue.hpp"
#include "bulbwright/packing_cache.hpp"
#include "bulbwright/plan.hpp"
#include "bulbwright/request.hpp"
#include "bulbwright/setting.hpp"

namespace bulbwright {

/// Everything a plan is a function of, besides the request itself.
struct PlanContext {
  const Catalogue* catalogue = nullptr;
  const BloomTable* blooms = nullptr;
  const Setting* setting = nullptr;
  Effort effort = Effort::quick;
  PackingCache* packings = nullptr;
};

/// One pot from request to whole answer: layers, cold, planting day, waves, materials, what to do
/// and what to beware of. A plan that cannot be carried out is an answer too: ok is false, the
/// reason is a notice of severity refusal, and what is known is filled in.
/// @throws InvalidValue for a pot or a taxon that cannot be (the readers check most of it before).
Plan make_plan(const PotFile& request, const PlanContext& context);

}  // namespace bulbwright
