#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include <fmt/core.h>

#include "climate/place.hpp"

namespace bulbwright {
namespace {

constexpr int half_zones = 26;  // 1a to 13b
constexpr double coldest_zone_f = -60.0;
constexpr double half_zone_f = 5.0;

/// 0 for 1a to 25 for 13b, or -1.
int half_zone_index(std::string_view zone) {
  int number = 0;
  const auto [end, fault] = std::from_chars(zone.data(), zone.data() + zone.size(), number);
  const std::string_view half = zone.substr(static_cast<std::size_t>(end - zone.data()));
  if (fault != std::errc{} || number < 1 || number > 13) return -1;
  if (zone.front() == '0' || (half != "a" && half != "b")) return -1;
  return 2 * (number - 1) + (half == "b" ? 1 : 0);
}

/// Where cold spells fall farther below the mean than elsewhere.
bool has_continental_lows(const Place& place) {
  if (place.country == "US" || place.country == "CA") return place.longitude > -105.0;
  constexpr std::array countries{"RU", "UA", "LT", "LV", "FI"};
  return std::any_of(countries.begin(), countries.end(),
                     [&](const char* country) { return place.country == country; });
}

}  // namespace

ZoneBounds zone_bounds(std::string_view zone) {
  const int index = half_zone_index(zone);
  if (index < 0) {
    throw InvalidValue{"zone",
                       fmt::format("{} is no hardiness zone; expected a number from 1 to 13 "
                                   "with a or b, such as \"9b\"",
                                   in_quotes(zone))};
  }
  const double low = coldest_zone_f + half_zone_f * index;
  return {from_fahrenheit(low), from_fahrenheit(low + half_zone_f)};
}

std::string zone_of(Celsius annual_low) {
  const double degrees_f = annual_low.value() * 1.8 + 32.0;
  const double step = std::floor((rounded(degrees_f, 1e-6) - coldest_zone_f) / half_zone_f);
  const int index = static_cast<int>(std::clamp(step, 0.0, half_zones - 1.0));
  return fmt::format("{}{}", index / 2 + 1, index % 2 == 0 ? 'a' : 'b');
}

Celsius annual_low(const Place& place) {
  if (!place.zone.empty()) {
    const ZoneBounds bounds = zone_bounds(place.zone);
    return (bounds.low + bounds.high) / 2.0 + Celsius{place.offset.nights.value()};
  }
  return estimated_annual_low(place);
}

Celsius estimated_annual_low(const Place& place) {
  const auto& tmin = place.normals.tmin_c;
  const double coldest = *std::min_element(tmin.begin(), tmin.end());
  return Celsius{-9.2 + 1.21 * coldest - (has_continental_lows(place) ? 2.1 : 0.0) +
                 (place.latitude < -23.0 ? 2.7 : 0.0)};
}

}  // namespace bulbwright
