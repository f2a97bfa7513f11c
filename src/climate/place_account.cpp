#include "climate/place_account.hpp"

#include <algorithm>

namespace bulbwright {
namespace {

constexpr std::size_t stations_in_words = 3;

Millimetres from_metres(double metres) {
  return Millimetres{1000.0 * metres};
}

Notice blend_notice(const PlaceAccount& account) {
  const bool far = account.blended_from.front().distance_km >= far_station_km ||
                   account.expected_error >= uncertain_blend;
  const std::vector<Remark> told = nearest_stations(account.blended_from);
  const auto others = account.blended_from.size() - told.size();
  Notice notice{far ? NoticeCode::stations_far : NoticeCode::stations_blended,
                far ? Severity::warning : Severity::note,
                {},
                {{DetailName::stations, told},
                 {DetailName::count, static_cast<int>(others) + account.farther_stations},
                 {DetailName::expect, account.expected_error}}};
  if (account.assumed_elevation_m) {
    notice.details.push_back({DetailName::height, from_metres(*account.assumed_elevation_m)});
  }
  return notice;
}

std::vector<Detail> details_of(const TemperatureOffset& offset) {
  return {{DetailName::nights, offset.nights}, {DetailName::daytimes, offset.days}};
}

}  // namespace

PlaceAccount account_of(const Place& place) {
  PlaceAccount account;
  account.rain_mm = place.rain_mm;
  account.water = winter_water(place);
  account.blended_from = place.blended_from;
  account.farther_stations = place.farther_stations;
  account.offset = place.offset;
  if (place.blended_from.empty()) return account;
  for (const double error : place.spread_k) account.expected_error += Kelvins{error / 12.0};
  account.expected_error = Kelvins{rounded(account.expected_error.value(), 0.1)};
  if (place.elevation_assumed) account.assumed_elevation_m = place.elevation_m;
  return account;
}

std::vector<Remark> nearest_stations(const std::vector<BlendedStation>& blended_from) {
  std::vector<Remark> remarks;
  for (std::size_t i = 0; i < std::min(stations_in_words, blended_from.size()); ++i) {
    const BlendedStation& station = blended_from[i];
    remarks.push_back({RemarkCode::station_there,
                       {},
                       {{DetailName::place, station.name},
                        {DetailName::distance, from_metres(1000.0 * station.distance_km)},
                        {DetailName::height, from_metres(station.higher_m)}}});
  }
  return remarks;
}

std::vector<Notice> place_notices(const PlaceAccount& account) {
  std::vector<Notice> notices;
  if (!account.blended_from.empty()) notices.push_back(blend_notice(account));
  if (account.offset != TemperatureOffset{}) {
    notices.push_back({NoticeCode::offset_applied, Severity::note, {}, details_of(account.offset)});
  }
  if (account.record_offset) {
    Notice notice{
        NoticeCode::record_offset, Severity::note, {}, details_of(account.record_offset->median)};
    notice.details.push_back({DetailName::days, account.record_offset->days});
    notice.details.push_back({DetailName::weather, account.record_offset->weather});
    notices.push_back(std::move(notice));
  }
  return notices;
}

}  // namespace bulbwright
