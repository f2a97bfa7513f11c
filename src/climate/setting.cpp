#include "climate/setting.hpp"

namespace bulbwright {

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
  setting.basis = std::move(basis);
  return setting;
}

}  // namespace bulbwright
