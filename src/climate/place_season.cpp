#include "climate/place_season.hpp"

#include <array>
#include <iterator>

namespace bulbwright {

PlaceSeason season_at_place(const Place& place, int season, Exposure exposure) {
  PlaceSeason place_season;
  place_season.label = place.name;
  place_season.latitude = place.latitude;
  place_season.hemisphere = hemisphere_of(place);
  place_season.season = season;
  place_season.exposure = exposure;
  place_season.frost = frost_climate(place);
  auto winters = winters_from_normals(place, season);
  place_season.winters.assign(std::make_move_iterator(winters.begin()),
                              std::make_move_iterator(winters.end()));
  place_season.normal = 0;
  place_season.mild = 1;
  place_season.cold = 2;
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
    basis.details.push_back({DetailName::stations, nearest_stations(place.blended_from)});
  }
  place_season.basis = std::move(basis);
  place_season.account = account_of(place);
  return place_season;
}

}  // namespace bulbwright
