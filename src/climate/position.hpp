#pragma once

#include <string>
#include <string_view>

namespace bulbwright {

/// A point on the earth, degrees; south and west negative.
struct GeoPoint {
  double latitude = 0.0;
  double longitude = 0.0;

  bool operator==(const GeoPoint&) const = default;
};

/// Reads "38.58, -121.49": latitude and longitude with a comma or blanks between.
/// @throws InvalidValue (empty field) where it is no position; says so where the two look swapped.
GeoPoint parse_position(std::string_view text);

/// "38.58, -121.49", as parse_position() reads it, to a hundredth of a degree (1.1 km).
std::string to_text(GeoPoint position);

/// Great circle, haversine on a sphere of 6371 km.
double distance_km(GeoPoint a, GeoPoint b);

}  // namespace bulbwright
