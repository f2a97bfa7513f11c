#pragma once

#include <optional>
#include <string>

#include "base/quantity.hpp"
#include "climate/place.hpp"
#include "climate/position.hpp"

namespace bulbwright {

/// The place as a file or the flags name it.
struct PlaceRequest {
  std::optional<std::string> zone;  ///< "9b", lower case
  bool south = false;               ///< with a zone
  std::optional<std::string> site;
  std::optional<GeoPoint> near;          ///< anywhere on land: blended from the stations around
  std::optional<Millimetres> elevation;  ///< with near: above the sea
  ZoneRegion region = ZoneRegion::all;   ///< with a zone: which of its stations
  std::optional<MonthlyNormals> normals;
  std::optional<TemperatureOffset> offset;  ///< with zone, site, near or normals: moves them
  std::optional<std::string> records_file;
  std::optional<double> latitude;  ///< degrees, south negative
  Exposure exposure = Exposure::open;

  bool operator==(const PlaceRequest&) const = default;
};

}  // namespace bulbwright
