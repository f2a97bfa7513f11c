#include "climate/place_near.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/core.h>

#include "climate/blend.hpp"
#include "climate/regions.hpp"

namespace bulbwright {
namespace {

constexpr double northernmost = 72.0, southernmost = -58.0;
constexpr double island_km = 30.0;  // a station so near makes land that the coarse grid misses
constexpr double same_zone_km = 15.0, same_zone_m = 150.0;
constexpr double lowest_m = -450.0, highest_m = 6000.0;  // the Dead Sea; no garden is higher
constexpr double far_above_m = 4000.0, far_below_m = 1500.0;
constexpr std::size_t stations_told = 6;
constexpr const char* source =
    "WorldClim 1.4 monthly means (1960-1990, moved to 1991-2020) at stations of the NOAA GSOD "
    "network";

std::string name_of(const Station& station, const Regions& regions) {
  const std::string_view behind = regions.behind_town(station.country, station.region);
  return behind.empty() ? std::string{station.name} : fmt::format("{}, {}", station.name, behind);
}

/// A known zone near by, else one estimated from the normals.
void set_zone(Place& place, std::span<const Place> known) {
  double nearest_km = same_zone_km;
  for (const Place& other : known) {
    if (other.zone.empty() || other.zone_estimated) continue;
    const double km =
        distance_km({other.latitude, other.longitude}, {place.latitude, place.longitude});
    const bool as_high = !other.elevation_m || !place.elevation_m ||
                         std::abs(*other.elevation_m - *place.elevation_m) <= same_zone_m;
    if (km > nearest_km || !as_high) continue;
    nearest_km = km;
    place.zone = other.zone;
  }
  if (!place.zone.empty()) return;
  place.zone = zone_of(estimated_annual_low(place));
  place.zone_estimated = true;
}

void check_where(const StationTable& stations, GeoPoint position,
                 const StationTable::Near& nearest) {
  const auto refuse = [&](const std::string& why) {
    throw InvalidValue{"near", fmt::format("{} {}", to_text(position), why)};
  };
  if (position.latitude > northernmost || position.latitude < southernmost) {
    refuse(fmt::format("lies too near the pole: places from {:.0f} S to {:.0f} N are known",
                       -southernmost, northernmost));
  }
  const std::string where =
      fmt::format("the nearest station, {}, is {:.0f} km away", stations.name(nearest.index),
                  rounded(nearest.distance_km, 1.0));
  if (!stations.has_land(position) && nearest.distance_km > island_km) {
    refuse(fmt::format("lies in the sea ({}); south and west are negative", where));
  }
  if (nearest.distance_km > farthest_station_km) {
    refuse(fmt::format("lies too far from every station: {}", where));
  }
}

void check_height(double elevation_m, const std::vector<Station>& around) {
  const auto [low, high] = std::minmax_element(
      around.begin(), around.end(),
      [](const Station& a, const Station& b) { return a.elevation_m < b.elevation_m; });
  const double least = std::max(lowest_m, low->elevation_m - far_below_m);
  const double most = std::min(highest_m, high->elevation_m + far_above_m);
  if (elevation_m >= least && elevation_m <= most) return;
  throw InvalidValue{"elevation", fmt::format("{:.0f} m is no height there; expected {:.0f} to "
                                              "{:.0f} m above the sea",
                                              elevation_m, least, most)};
}

}  // namespace

Place place_near(const StationTable& stations, std::span<const Place> known, GeoPoint position,
                 std::optional<double> elevation_m) {
  const auto near = stations.nearest(position, blended_stations);
  check_where(stations, position, near.front());
  std::vector<Station> around;
  for (const auto& one : near) around.push_back(stations.station(one.index));
  if (elevation_m) check_height(*elevation_m, around);
  const Blend blend = blended(around, position, elevation_m);
  const Regions regions = Regions::builtin();
  Place place;
  place.name = fmt::format("{} near {}", to_text(position), name_of(around.front(), regions));
  place.country = around.front().country;
  place.latitude = position.latitude;
  place.longitude = position.longitude;
  place.elevation_m = rounded(blend.elevation_m, 1.0);
  place.elevation_assumed = blend.elevation_assumed;
  place.normals = blend.normals;
  place.rain_mm = blend.rain_mm;
  place.spread_k = blend.error_k;
  place.source = source;
  place.confidence = "blended from published (gridded) values";
  for (std::size_t i = 0; i < std::min(stations_told, around.size()); ++i) {
    place.blended_from.push_back({name_of(around[i], regions), rounded(near[i].distance_km, 0.1),
                                  around[i].elevation_m,
                                  rounded(around[i].elevation_m - *place.elevation_m, 1.0),
                                  rounded(blend.weights[i], 0.01)});
  }
  place.farther_stations = static_cast<int>(around.size() - place.blended_from.size());
  set_zone(place, known);
  return place;
}

Place place_of(const Station& station, std::span<const Place> known) {
  Place place;
  place.name = name_of(station, Regions::builtin());
  place.country = station.country;
  place.latitude = station.position.latitude;
  place.longitude = station.position.longitude;
  place.elevation_m = station.elevation_m;
  place.normals = station.normals;
  place.rain_mm = station.rain_mm;
  place.source = fmt::format("{}: station {}", source, station.number);
  place.confidence = "derived from published (gridded)";
  set_zone(place, known);
  return place;
}

std::array<double, 12> rain_near(const StationTable& stations, GeoPoint position,
                                 std::optional<double> elevation_m) {
  std::vector<Station> around;
  for (const auto& near : stations.nearest(position, blended_stations)) {
    around.push_back(stations.station(near.index));
  }
  return blended(around, position, elevation_m).rain_mm;
}

}  // namespace bulbwright
