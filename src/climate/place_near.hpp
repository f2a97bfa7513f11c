#pragma once

#include <array>
#include <optional>
#include <span>

#include "climate/place.hpp"
#include "climate/position.hpp"
#include "climate/station_table.hpp"

namespace bulbwright {

/// Farther from every station than this nothing is said of a place: kilometres.
inline constexpr double farthest_station_km = 400.0;

/// The climate anywhere on land: blended from the stations around `position` for a place
/// `elevation_m` above the sea (not given: the stations' own, and the place says so). spread_k is
/// the error that is expected of each month, blended_from the nearest stations. The zone is that of
/// a place of `known` within 15 km and 150 m of height, where it is known; else estimated from the
/// normals, and marked.
/// @throws InvalidValue with the field "near" at sea, beyond 72 N or 58 S, or farther from every
/// station than farthest_station_km; with "elevation" for a height more than 4000 m above or 1500 m
/// below every station around, or outside -450 to 6000 m.
Place place_near(const StationTable& stations, std::span<const Place> known, GeoPoint position,
                 std::optional<double> elevation_m);

/// A station as a place, with nothing blended.
Place place_of(const Station& station, std::span<const Place> known);

/// Monthly rain blended from the stations around, millimetres.
std::array<double, 12> rain_near(const StationTable& stations, GeoPoint position,
                                 std::optional<double> elevation_m);

}  // namespace bulbwright
