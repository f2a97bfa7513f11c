#pragma once

#include <span>

#include "catalogue/catalogue.hpp"
#include "caution/caution.hpp"
#include "climate/place_season.hpp"
#include "flowering/bloom_parameters.hpp"
#include "packing/packing.hpp"

namespace bulbwright {

/// Everything a plan is a function of, besides the request itself. All of it must outlive the
/// context; references, so that one without a part does not compile.
struct PlanContext {
  const Catalogue& catalogue;
  const BloomTable& blooms;
  const PlaceSeason& place_season;
  Effort effort;
  PackingCache& packings;
  std::span<const CautionRule> cautions{};  ///< empty: the built-in ones
};

}  // namespace bulbwright
