#include "report/place_json.hpp"

namespace bulbwright::report {
namespace {

Json offset_json(const TemperatureOffset& offset) {
  return {{"nights_k", rounded(offset.nights.value(), 0.01)},
          {"days_k", rounded(offset.days.value(), 0.01)}};
}

}  // namespace

Json months_json(const std::array<double, 12>& values, double step) {
  Json list = Json::array();
  for (const double value : values) list.push_back(rounded(value, step));
  return list;
}

Json stations_json(std::span<const BlendedStation> stations) {
  Json list = Json::array();
  for (const BlendedStation& station : stations) {
    list.push_back({{"name", station.name},
                    {"distance_km", rounded(station.distance_km, 0.1)},
                    {"elevation_m", rounded(station.elevation_m, 1.0)},
                    {"higher_m", rounded(station.higher_m, 1.0)},
                    {"weight", rounded(station.weight, 0.01)}});
  }
  return list;
}

void put_account(Json& json, const PlaceAccount& account) {
  if (account.rain_mm) json["rain_mm"] = months_json(*account.rain_mm, 1.0);
  if (account.water) {
    json["winter_rain"] = {
        {"kind", word_of(account.water->rain)},
        {"fallen_mm_a_month", rounded(account.water->fallen_mm_a_month, 1.0)},
        {"evaporation_mm_a_month", rounded(account.water->evaporation_mm_a_month, 1.0)}};
  }
  if (!account.blended_from.empty()) {
    json["blended_from"] = stations_json(account.blended_from);
    json["farther_stations"] = account.farther_stations;
    json["expected_error_k"] = rounded(account.expected_error.value(), 0.1);
    json["elevation_assumed"] = account.assumed_elevation_m.has_value();
  }
  if (account.offset != TemperatureOffset{}) json["offset"] = offset_json(account.offset);
  if (account.record_offset) {
    json["record_offset"] = offset_json(account.record_offset->median);
    json["record_offset"]["compared_days"] = account.record_offset->days;
    json["record_offset"]["weather_k"] = rounded(account.record_offset->weather.value(), 0.1);
  }
}

}  // namespace bulbwright::report
