#include "climate/setting.hpp"

#include <fmt/core.h>

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
  const double mean = rounded(sum / 12.0, 0.1);
  setting.basis =
      place.stations > 0
          ? fmt::format(
                "the mean of {} stations of the zone; places within one zone differ, so the "
                "mild and the cold winter lie {:.1f} degrees C apart from the normal one",
                place.stations, mean)
          : fmt::format(
                "monthly normals; the mild and the cold winter lie {:.1f} degrees C apart "
                "from the normal one",
                mean);
  return setting;
}

}  // namespace bulbwright
