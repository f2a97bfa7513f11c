#include "climate/position.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <numbers>

#include <fmt/core.h>

#include "base/error.hpp"
#include "base/quantity.hpp"

namespace bulbwright {
namespace {

double radians(double degrees) {
  return degrees * std::numbers::pi / 180.0;
}

}  // namespace

GeoPoint parse_position(std::string_view text) {
  GeoPoint position;
  const char* const end = text.data() + text.size();
  const auto skip = [&](const char* at) {
    while (at != end && (*at == ',' || *at == ' ')) ++at;
    return at;
  };
  const auto number = [&](const char* at, double& value) {
    const auto [stop, fault] = std::from_chars(at, end, value, std::chars_format::fixed);
    return fault == std::errc{} ? stop : nullptr;
  };
  const char* at = number(skip(text.data()), position.latitude);
  if (at != nullptr) at = skip(at) == at ? nullptr : number(skip(at), position.longitude);
  const bool read = at != nullptr && skip(at) == end;
  const auto within = [](double latitude, double longitude) {
    return std::abs(latitude) <= 90.0 && std::abs(longitude) <= 180.0;
  };
  if (read && within(position.latitude, position.longitude)) return position;
  const bool swapped = read && within(position.longitude, position.latitude);
  throw InvalidValue{
      "", fmt::format("{} is no position; expected latitude and longitude in degrees, south and "
                      "west negative, such as \"38.58, -121.49\"{}",
                      in_quotes(text),
                      swapped ? "; latitude comes first: did you mean \"" +
                                    to_text({position.longitude, position.latitude}) + "\"?"
                              : "")};
}

std::string to_text(GeoPoint position) {
  // Adding zero turns -0.00 into 0.00.
  return fmt::format("{:.2f}, {:.2f}", rounded(position.latitude, 0.01) + 0.0,
                     rounded(position.longitude, 0.01) + 0.0);
}

double distance_km(GeoPoint a, GeoPoint b) {
  constexpr double earth_radius_km = 6371.0;
  const double dlat = std::sin(radians(b.latitude - a.latitude) / 2);
  const double dlon = std::sin(radians(b.longitude - a.longitude) / 2);
  const double h =
      dlat * dlat + std::cos(radians(a.latitude)) * std::cos(radians(b.latitude)) * dlon * dlon;
  return 2 * earth_radius_km * std::asin(std::sqrt(std::clamp(h, 0.0, 1.0)));
}

}  // namespace bulbwright
