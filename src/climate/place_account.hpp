#pragma once

#include <array>
#include <optional>
#include <vector>

#include "base/notice.hpp"
#include "climate/place.hpp"
#include "climate/record_offset.hpp"
#include "climate/winter_rain.hpp"

namespace bulbwright {

/// What an answer tells of its climate beside the winters made from it.
struct PlaceAccount {
  std::optional<std::array<double, 12>> rain_mm;  ///< a month, January first, where known
  std::optional<WinterWater> water;               ///< where the rain is known
  std::vector<BlendedStation> blended_from;       ///< of a blend, nearest first
  int farther_stations = 0;                       ///< of the blend, beside those
  Kelvins expected_error{0.0};                    ///< of a blend, mean over the year
  std::optional<double> assumed_elevation_m;      ///< of a blend without a height of its own
  TemperatureOffset offset;                       ///< that the normals were moved by
  std::optional<RecordOffset> record_offset;      ///< of a record beside the place
};

PlaceAccount account_of(const Place& place);

/// From here on a blend is said to be uncertain: kelvin.
inline constexpr Kelvins uncertain_blend{1.0};

/// The nearest three of a blend's stations, each a remark.
std::vector<Remark> nearest_stations(const std::vector<BlendedStation>& blended_from);

/// Where a blend comes from and how good it is (a warning where its stations are far_station_km
/// away, or its error reaches uncertain_blend), an offset, and how a record differs.
std::vector<Notice> place_notices(const PlaceAccount& account);

}  // namespace bulbwright
