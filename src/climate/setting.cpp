#include "climate/setting.hpp"

#include <algorithm>

#include <fmt/core.h>

namespace bulbwright {
namespace {

/// "Davis, California (20 km, 18 m)": the nearest three of a blend, how far and how high.
std::string nearest_stations(const Place& place) {
  std::string stations;
  for (std::size_t i = 0; i < std::min<std::size_t>(3, place.blended_from.size()); ++i) {
    const BlendedStation& station = place.blended_from[i];
    stations += fmt::format("{}{} ({:.0f} km, {:.0f} m)", i > 0 ? ", " : "", station.name,
                            rounded(station.distance_km, 1.0), station.elevation_m);
  }
  return stations;
}

}  // namespace

Setting setting_from_place(const Place& place, int season, Exposure exposure) {
  Setting setting;
  setting.label = place.name;
  setting.latitude = place.latitude;
  setting.hemisphere = hemisphere_of(place);
  setting.season = season;
  setting.exposure = exposure;
  setting.annual_low = annual_low(place);
  auto winters = winters_from_normals(place, season);
  setting.winters.assign(std::make_move_iterator(winters.begin()),
                         std::make_move_iterator(winters.end()));
  setting.normal = 0;
  setting.mild = 1;
  setting.cold = 2;
  const std::array<double, 12> deviation = winter_deviation_k(place);
  double sum = 0.0;
  for (const double month : deviation) sum += month;
  Remark basis{RemarkCode::from_normals, {}, {{DetailName::yearly, Kelvins{sum / 12.0}}}};
  if (place.stations > 0) {
    basis.code = RemarkCode::from_stations;
    basis.details.push_back({DetailName::stations, place.stations});
  }
  if (!place.blended_from.empty()) {
    basis.code = place.elevation_assumed ? RemarkCode::from_blend_assumed : RemarkCode::from_blend;
    basis.details.push_back({DetailName::place, nearest_stations(place)});
  }
  setting.basis = std::move(basis);
  return setting;
}

}  // namespace bulbwright
