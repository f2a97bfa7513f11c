#pragma once

#include "bulbwright/bloom_parameters.hpp"
#include "bulbwright/catalogue.hpp"
#include "bulbwright/packing_cache.hpp"
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

}  // namespace bulbwright
