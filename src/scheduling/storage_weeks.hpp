#pragma once

#include <vector>

#include "cold/cold_plan.hpp"
#include "flowering/timing.hpp"

namespace bulbwright {

/// storage_by_week() of a kind over the whole planting season; empty for kinds that no refrigerator
/// holds, or whose weeks are given.
std::vector<StorageOfWeek> season_storage(const TimedKind& kind, const PotSeason& season);

}  // namespace bulbwright
