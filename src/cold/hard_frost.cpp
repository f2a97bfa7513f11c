#include "cold/hard_frost.hpp"

#include <array>
#include <string_view>
#include <utility>

#include "catalogue/taxon.hpp"

namespace bulbwright {
namespace {

constexpr int tender_from_zone = 8;
constexpr double usual_lethal_c = -10.0;
constexpr std::array<std::pair<std::string_view, double>, 5> by_taxon{
    {{"narcissus-poeticus", -10.0},
     {"narcissus-tazetta-tender", -5.0},
     {"iris-hollandica", -7.0},
     {"ixia", -7.0},
     {"anemone-blanda", -10.0}}};
constexpr std::array<std::pair<std::string_view, double>, 7> by_genus{{{"Muscari", -15.0},
                                                                       {"Narcissus", -7.0},
                                                                       {"Hyacinthus", -7.0},
                                                                       {"Freesia", -3.0},
                                                                       {"Anemone", -3.0},
                                                                       {"Ranunculus", -3.0},
                                                                       {"Sparaxis", -3.0}}};

}  // namespace

Celsius lowest_in_frost(const PlaceSeason& place_season, const PotThermal& pot) {
  const Winter& normal = place_season.winters[place_season.normal];
  Place place;
  place.latitude = place_season.latitude;
  place.zone = zone_of(place_season.annual_low);
  std::array<int, 12> days{};
  const DayWindow year = season_days(place_season.season, place_season.hemisphere);
  for (std::size_t d = 0; d < normal.days.size(); ++d) {
    const Day day = normal.first + static_cast<int>(d);
    if (day < year.first || day > year.last) continue;
    place.normals.tmin_c[day.month() - 1] += normal.days[d].tmin_c;
    place.normals.tmax_c[day.month() - 1] += normal.days[d].tmax_c;
    ++days[day.month() - 1];
  }
  for (std::size_t m = 0; m < 12; ++m) {
    if (days[m] == 0) continue;
    place.normals.tmin_c[m] /= days[m];
    place.normals.tmax_c[m] /= days[m];
  }
  return lowest_in_frost(place, pot, place_season.exposure);
}

FrostLimit frost_limit(const Taxon& taxon) {
  FrostLimit limit{Celsius{usual_lethal_c}, taxon.hardiness_min_zone >= tender_from_zone};
  for (const auto& [genus, lethal_c] : by_genus) {
    if (taxon.genus == genus) limit.lethal = Celsius{lethal_c};
  }
  for (const auto& [id, lethal_c] : by_taxon) {
    if (taxon.id == id) limit.lethal = Celsius{lethal_c};
  }
  return limit;
}

}  // namespace bulbwright
