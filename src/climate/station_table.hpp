#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "climate/place.hpp"
#include "climate/position.hpp"

namespace bulbwright {

/// A station of the table compiled in.
struct Station {
  std::string_view name;     ///< "Chico Municipal Airport", without state or country
  std::string_view country;  ///< ISO 3166-1 alpha-2
  std::string_view region;   ///< state or province of US and CA ("CA" of US-CA), or empty
  std::string_view number;   ///< of the network, "724936-23254"
  GeoPoint position;
  double elevation_m = 0.0;
  MonthlyNormals normals;
  std::array<double, 12> rain_mm{};  ///< a month, January first
};

/// The stations that any place on earth is blended from. A view of bytes made at build time by
/// data/places_dense/compact_places.cpp: building it reads 16 of them, a look-up only what it
/// needs.
///
/// Bytes, little endian:
///   magic "BWST"; u32 stations n; u32 land runs r; u32 bytes of names
///   n x { i16 latitude, i16 longitude, in 0.01 degree; i16 elevation, m }
///   n x { 12 i16 tmin, in 0.1 degC; 12 u8 tmax - tmin, in 0.1 K; 12 u16 rain, mm }
///   n + 1 x u32 where a name begins among the names
///   names: country (2), region (2, blanks for none), number (12), name
///   721 x u16 where a row of land begins among the runs; r x { u16 first, u16 last cell }
/// Land is a grid of quarter degrees from 90 N, 180 W; a cell with any land in it counts.
class StationTable {
 public:
  /// The table compiled in.
  static StationTable builtin();
  /// `bytes` outlives the table. An assert of the build: they are as compact_places writes them.
  explicit StationTable(std::string_view bytes);

  [[nodiscard]] std::size_t size() const { return size_; }
  [[nodiscard]] GeoPoint position(std::size_t index) const;
  [[nodiscard]] Station station(std::size_t index) const;
  /// Name alone, which is all that a search reads.
  [[nodiscard]] std::string_view name(std::size_t index) const;
  [[nodiscard]] std::string_view country(std::size_t index) const;
  [[nodiscard]] std::string_view region(std::size_t index) const;

  struct Near {
    std::size_t index = 0;
    double distance_km = 0.0;
  };
  /// The nearest `count` stations, nearest first.
  [[nodiscard]] std::vector<Near> nearest(GeoPoint position, std::size_t count) const;

  /// Is there land within the quarter degree of `position`? Small islands may be missing.
  /// Source: Natural Earth, 1:50m land polygons, public domain.
  [[nodiscard]] bool has_land(GeoPoint position) const;

 private:
  [[nodiscard]] std::string_view record(std::size_t index) const;
  [[nodiscard]] std::int16_t i16(std::size_t at) const;
  [[nodiscard]] std::uint16_t u16(std::size_t at) const;
  [[nodiscard]] std::uint32_t u32(std::size_t at) const;

  std::string_view bytes_;
  std::size_t size_ = 0;
  std::size_t positions_ = 0, climates_ = 0, offsets_ = 0, names_ = 0, land_rows_ = 0, runs_ = 0;
};

}  // namespace bulbwright
