#include <algorithm>
#include <cmath>

#include <fmt/core.h>

#include "base/near_miss.hpp"
#include "climate/place.hpp"

namespace bulbwright {
namespace {

constexpr std::size_t fewest_stations = 3;
bool in_region(const Place& place, ZoneRegion region) {
  switch (region) {
    case ZoneRegion::north_american:
      return place.country == "US" || place.country == "CA" || place.country == "MX";
    case ZoneRegion::maritime:
      return is_maritime(place.normals);
    case ZoneRegion::continental:
      return !is_maritime(place.normals);
    case ZoneRegion::all:
      break;
  }
  return true;
}

/// The half zone `steps` above (or below), or empty beyond the ends.
std::string neighbour(std::string_view zone, int steps) {
  const ZoneBounds bounds = zone_bounds(zone);
  const Celsius middle = (bounds.low + bounds.high) / 2.0 + steps * (bounds.high - bounds.low);
  const std::string other = zone_of(middle);
  return other == zone ? std::string{} : other;
}

/// A northern climate with the months moved by half a year.
Place mirrored(Place place) {
  auto& [tmin, tmax] = place.normals;
  std::rotate(tmin.begin(), tmin.begin() + 6, tmin.end());
  std::rotate(tmax.begin(), tmax.begin() + 6, tmax.end());
  place.latitude = -place.latitude;
  return place;
}

Place mean_of(const std::vector<Place>& stations) {
  const auto n = static_cast<double>(stations.size());
  Place mean;
  std::array<double, 12> sum{}, squares{};
  for (const Place& station : stations) {
    mean.latitude += station.latitude / n;
    const auto means = monthly_means(station.normals);
    for (std::size_t m = 0; m < 12; ++m) {
      mean.normals.tmin_c[m] += station.normals.tmin_c[m] / n;
      mean.normals.tmax_c[m] += station.normals.tmax_c[m] / n;
      sum[m] += means[m];
    }
  }
  if (stations.size() < 2) return mean;
  for (const Place& station : stations) {
    const auto means = monthly_means(station.normals);
    for (std::size_t m = 0; m < 12; ++m) squares[m] += std::pow(means[m] - sum[m] / n, 2);
  }
  for (std::size_t m = 0; m < 12; ++m) mean.spread_k[m] = std::sqrt(squares[m] / (n - 1));
  return mean;
}

/// The stations that a zone's profile rests on, and what had to be widened to find enough.
struct Stations {
  std::vector<const Place*> places;
  ZoneRegion region = ZoneRegion::all;
  std::optional<Remark> note;
};

class StationSearch {
 public:
  StationSearch(const std::vector<Place>& all, std::string_view zone) : all_{all}, zone_{zone} {}

  [[nodiscard]] Stations find(bool south, ZoneRegion region) const {
    Stations found{in(zone_, south, region), region, std::nullopt};
    if (enough(found)) return found;
    found.places = with_neighbours(south, region);
    found.note = Remark{RemarkCode::neighbours_taken};
    if (enough(found)) return found;
    if (region != ZoneRegion::all) {
      found = {
          with_neighbours(south, ZoneRegion::all), ZoneRegion::all,
          Remark{
              RemarkCode::regions_taken, {}, {{DetailName::region, std::string{word_of(region)}}}}};
      if (enough(found)) return found;
    }
    if (south) {
      found = {in(zone_, false, ZoneRegion::all), ZoneRegion::all,
               Remark{RemarkCode::northern_taken}};
    }
    return found;
  }

 private:
  static bool enough(const Stations& found) { return found.places.size() >= fewest_stations; }

  [[nodiscard]] std::vector<const Place*> in(std::string_view zone, bool south,
                                             ZoneRegion region) const {
    std::vector<const Place*> places;
    for (const Place& place : all_) {
      if (place.zone == zone && (place.latitude < 0.0) == south && in_region(place, region)) {
        places.push_back(&place);
      }
    }
    return places;
  }

  [[nodiscard]] std::vector<const Place*> with_neighbours(bool south, ZoneRegion region) const {
    std::vector<const Place*> places = in(zone_, south, region);
    for (const int side : {-1, 1}) {
      const std::string other = neighbour(zone_, side);
      if (other.empty()) continue;
      const auto more = in(other, south, region);
      places.insert(places.end(), more.begin(), more.end());
    }
    return places;
  }

  const std::vector<Place>& all_;
  std::string_view zone_;
};

void require_profiled(std::string_view zone) {
  const Celsius low = zone_bounds(zone).low;
  if (low >= zone_bounds("4a").low && low <= zone_bounds("11b").low) return;
  throw InvalidValue{"zone", fmt::format("{} has no profile; expected 4a to 11b, or a site or "
                                         "normals instead",
                                         in_quotes(zone))};
}

}  // namespace

std::vector<const Place*> PlaceCatalogue::zone_stations(std::string_view zone, bool south,
                                                        ZoneRegion region) const {
  require_profiled(zone);
  return StationSearch{places_, zone}.find(south, region).places;
}

Place PlaceCatalogue::zone_profile(std::string_view zone, bool south, ZoneRegion region) const {
  require_profiled(zone);
  const Stations found = StationSearch{places_, zone}.find(south, region);
  if (found.places.empty()) {
    throw InvalidValue{"zone", fmt::format("{} has no station to go by", in_quotes(zone))};
  }
  std::vector<Place> stations;
  for (const Place* place : found.places) {
    stations.push_back(south && place->latitude >= 0.0 ? mirrored(*place) : *place);
  }
  Place profile = mean_of(stations);
  profile.name = fmt::format(
      "zone {}{}{}", zone, south ? ", south" : "",
      found.region == ZoneRegion::all ? "" : fmt::format(", {}", word_of(found.region)));
  profile.zone = zone;
  profile.stations = static_cast<int>(stations.size());
  profile.source =
      fmt::format("mean of {} stations of the catalogue in this zone", stations.size());
  profile.confidence = "a zone tells only the lowest temperature of a year";
  profile.note = found.note;
  return profile;
}

}  // namespace bulbwright
