#pragma once

#include <array>
#include <span>

#include "climate/place_account.hpp"
#include "report/section_json.hpp"

namespace bulbwright::report {

/// Twelve values, January first.
Json months_json(const std::array<double, 12>& values, double step);

/// The stations of a blend: name, distance_km, elevation_m, higher_m, weight.
Json stations_json(std::span<const BlendedStation> stations);

/// Adds what is known of a climate: rain_mm, winter_rain, blended_from and what goes with it,
/// offset_k, record_offset.
void put_account(Json& json, const PlaceAccount& account);

}  // namespace bulbwright::report
