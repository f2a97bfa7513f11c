#pragma once

#include "catalogue/catalogue.hpp"
#include "climate/setting.hpp"
#include "flowering/bloom_parameters.hpp"
#include "packing/packing_cache.hpp"

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
