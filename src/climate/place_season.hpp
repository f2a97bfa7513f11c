#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/calendar_day.hpp"
#include "climate/climate.hpp"
#include "climate/frost_climate.hpp"
#include "climate/place.hpp"
#include "climate/place_account.hpp"

namespace bulbwright {

/// Where and when a pot stands, resolved: the winters that its plan must hold for. Data only; the
/// edges fill it from the catalogue or from a record, the planner reads it.
struct PlaceSeason {
  std::string label;              ///< "zone 9b", "San Francisco, California", "your normals"
  std::optional<Remark> basis{};  ///< how the winters were made
  double latitude = 0.0;          ///< degrees, south negative
  Hemisphere hemisphere = Hemisphere::north;
  int season = 0;
  Exposure exposure = Exposure::open;
  std::vector<Winter> winters;  ///< at least one; three when made from normals
  /// Indices into winters: the one that stands for the normal, the mild and the cold winter.
  std::size_t normal = 0, mild = 0, cold = 0;
  bool recorded = false;              ///< the winters are recorded years
  std::optional<Day> measured_until;  ///< last measured day of a running winter
  FrostClimate frost;
  PlaceAccount account{};
};

/// The normal, mild and cold winter of a place.
PlaceSeason season_at_place(const Place& place, int season, Exposure exposure);

}  // namespace bulbwright
