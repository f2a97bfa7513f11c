#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/calendar_day.hpp"
#include "base/detail.hpp"
#include "base/enum_words.hpp"
#include "base/error.hpp"
#include "base/quantity.hpp"

namespace bulbwright {

/// Mean daily minimum and maximum of each month, January first, in degrees Celsius.
struct MonthlyNormals {
  std::array<double, 12> tmin_c{};
  std::array<double, 12> tmax_c{};

  bool operator==(const MonthlyNormals&) const = default;
};

/// How a pot stands at its place; what each does is in effect_of() of pot_temperature.hpp.
enum class Exposure { open, sheltered, warm_wall, plunged };
constexpr auto enum_words(Exposure) {
  return words_to<Exposure::plunged>("open", "sheltered", "warm-wall", "plunged");
}

/// One of the stations that a place is blended from.
struct BlendedStation {
  std::string name;  ///< "Chico Municipal Airport, California"
  double distance_km = 0.0;
  double elevation_m = 0.0;
  double higher_m = 0.0;  ///< than the place
  double weight = 0.0;    ///< in the blend, whose weights add up to 1; may be negative

  bool operator==(const BlendedStation&) const = default;
};

/// How much warmer a spot is than the normals of its place.
struct TemperatureOffset {
  Kelvins nights{0.0};  ///< daily minimum
  Kelvins days{0.0};    ///< daily maximum

  bool operator==(const TemperatureOffset&) const = default;
};

/// From here on a blend says that its stations are far: kilometres.
inline constexpr double far_station_km = 100.0;

/// A climate: a station of the catalogue, a hardiness zone's profile, a blend of the stations
/// around a position, or the grower's own normals.
struct Place {
  std::string name;        ///< "San Francisco, California", "zone 9b, north-american"
  std::string country;     ///< ISO 3166-1 alpha-2, or empty
  double latitude = 0.0;   ///< degrees, south negative
  double longitude = 0.0;  ///< degrees, west negative; no meaning for a zone
  std::optional<double> elevation_m;
  std::string zone;             ///< USDA hardiness zone "9b", or empty where none is known
  bool zone_estimated = false;  ///< the zone follows from the normals, not from a map
  MonthlyNormals normals;
  std::optional<std::array<double, 12>> rain_mm;  ///< a month, January first, where known
  std::string source;
  std::string confidence;

  /// Stations that a zone profile averages; 0 for a single place.
  int stations = 0;
  /// How far each month's mean temperature may lie from the normals, as a standard deviation in
  /// kelvin: of a zone profile that between its stations, of a blend its expected error; zero for a
  /// single place.
  std::array<double, 12> spread_k{};
  /// The nearest stations of a blend, nearest first; empty for any other place.
  std::vector<BlendedStation> blended_from;
  int farther_stations = 0;        ///< of the blend, beside those
  bool elevation_assumed = false;  ///< of a blend: the stations' own height
  TemperatureOffset offset{};      ///< that the normals were moved by (record_offset.hpp)
  /// What should be said beside every figure of this place.
  std::optional<Remark> note{};
};

/// North for a latitude of 0 or above.
Hemisphere hemisphere_of(const Place& place);

/// Mean temperature of each month, (tmin + tmax) / 2.
std::array<double, 12> monthly_means(const MonthlyNormals& normals);

/// Warmest less coldest monthly mean, in kelvin.
double annual_range_k(const MonthlyNormals& normals);

/// A maritime place has an annual range of at most 15 K. common practice: climatologists draw the
/// line between 10 and 20 K.
inline constexpr double maritime_range_k = 15.0;
bool is_maritime(const MonthlyNormals& normals);

/// Places from a CSV text with the columns name, latitude, longitude, tmin_c_01..tmin_c_12,
/// tmax_c_01..tmax_c_12, source, and optionally country, elevation_m, zone ("9b", or "9b~" where
/// estimated), zone_estimated (true, false), rain_mm_01..rain_mm_12 and confidence, in any order;
/// the older names site, lat, lon, elev_m, usda_zone, tmin_01, tmax_01 mean the same. The built-in
/// file passes the same checks.
/// @throws InputError with every fault: file, line, column name, what was expected.
std::vector<Place> parse_places_csv(std::string_view text, const std::string& file);

/// Which stations of a zone to average. `all` means the whole hemisphere asked for.
enum class ZoneRegion { all, north_american, maritime, continental };
constexpr auto enum_words(ZoneRegion) {
  return words_to<ZoneRegion::continental>("all", "north-american", "maritime", "continental");
}

/// The places the program knows. A value: building it parses the built-in file (about 1 ms), so
/// build it once and hand it on.
class PlaceCatalogue {
 public:
  explicit PlaceCatalogue(std::vector<Place> places);

  /// The catalogue compiled in.
  static PlaceCatalogue builtin();

  /// Adds places; one of the same name (case ignored) is replaced.
  void add(std::vector<Place> places);

  [[nodiscard]] const std::vector<Place>& places() const { return places_; }

  /// The place named exactly, else those whose town (the part before the first comma) is `text`,
  /// else those with `text` in their name. Case and accents are ignored.
  [[nodiscard]] std::vector<const Place*> named(std::string_view text) const;

  /// The only one of named(). @throws InvalidValue with the candidates (ten at most), or a near
  /// miss.
  [[nodiscard]] const Place& find(std::string_view text) const;

  struct Near {
    const Place* place = nullptr;
    double distance_km = 0.0;  ///< great circle, haversine on a sphere of 6371 km
  };
  /// The nearest `count` places, nearest first.
  [[nodiscard]] std::vector<Near> nearest(double latitude, double longitude,
                                          std::size_t count) const;

  /// The profile of a zone: the mean of its stations' normals on that side of the equator, with
  /// their spread. With fewer than three stations the two half zones beside it are taken in, then
  /// (south) northern stations with the months moved by six; the note says so. The latitude is the
  /// stations' mean.
  /// @throws InvalidValue for a zone outside 4a to 11b, with a near miss for the form.
  [[nodiscard]] Place zone_profile(std::string_view zone, bool south = false,
                                   ZoneRegion region = ZoneRegion::all) const;

  /// The stations that zone_profile() averages, as they stand in the catalogue.
  [[nodiscard]] std::vector<const Place*> zone_stations(std::string_view zone, bool south = false,
                                                        ZoneRegion region = ZoneRegion::all) const;

 private:
  std::vector<Place> places_;
};

/// Mean annual lowest temperature that a USDA zone stands for.
/// Source: USDA Plant Hardiness Zone Map: zone n starts at -60 + 10 (n - 1) degF, half b 5 degF
/// above; each half is 5 degF wide.
struct ZoneBounds {
  Celsius low;
  Celsius high;
};
/// "1a" to "13b". @throws InvalidValue.
ZoneBounds zone_bounds(std::string_view zone);

/// The zone of a mean annual lowest temperature, "1a" to "13b" (held at the ends).
std::string zone_of(Celsius annual_low);

/// Mean annual lowest temperature of a place: the middle of its zone, moved as its nights are;
/// without a zone estimated_annual_low().
Celsius annual_low(const Place& place);

/// The rule that estimated zones follow: -9.2 + 1.21 x the coldest month's mean minimum, less 2.1
/// in North America east of 105 W and in Russia, Ukraine, Lithuania, Latvia and Finland, 2.7 more
/// south of 23 S. Fitted to 147 places of known zone with a root mean square error of 1.7 K, 0.8 K
/// of which are the map's own steps; with squares of 6 by 10 degrees left out of the fit 1.9 K,
/// south of 23 S 2.1 K; nine in ten within 2.8 K.
Celsius estimated_annual_low(const Place& place);

}  // namespace bulbwright
