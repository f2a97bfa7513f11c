#include "climate/station_table.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numbers>

namespace bulbwright::embedded {
extern const std::string_view places_dense;
}

namespace bulbwright {
namespace {

constexpr std::size_t header_bytes = 16, position_bytes = 6, climate_bytes = 60;
constexpr std::size_t name_prefix = 16;  // country, region, number
constexpr int land_rows = 720, land_columns = 1440;
constexpr double cell_degrees = 0.25;

}  // namespace

StationTable StationTable::builtin() {
  return StationTable{embedded::places_dense};
}

StationTable::StationTable(std::string_view bytes) : bytes_{bytes} {
  assert(bytes.size() > header_bytes && bytes.substr(0, 4) == "BWST");
  size_ = u32(4);
  positions_ = header_bytes;
  climates_ = positions_ + position_bytes * size_;
  offsets_ = climates_ + climate_bytes * size_;
  names_ = offsets_ + 4 * (size_ + 1);
  land_rows_ = names_ + u32(12);
  runs_ = land_rows_ + 2 * (land_rows + 1);
  assert(runs_ + 4 * u32(8) == bytes.size());
}

std::uint16_t StationTable::u16(std::size_t at) const {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(bytes_[i]); };
  return static_cast<std::uint16_t>(byte(at) | byte(at + 1) << 8);
}

std::int16_t StationTable::i16(std::size_t at) const {
  return static_cast<std::int16_t>(u16(at));
}

std::uint32_t StationTable::u32(std::size_t at) const {
  return u16(at) | static_cast<std::uint32_t>(u16(at + 2)) << 16;
}

GeoPoint StationTable::position(std::size_t index) const {
  const std::size_t at = positions_ + position_bytes * index;
  return {i16(at) / 100.0, i16(at + 2) / 100.0};
}

std::string_view StationTable::record(std::size_t index) const {
  const std::size_t from = u32(offsets_ + 4 * index), to = u32(offsets_ + 4 * (index + 1));
  return bytes_.substr(names_ + from, to - from);
}

std::string_view StationTable::name(std::size_t index) const {
  return record(index).substr(name_prefix);
}

std::string_view StationTable::country(std::size_t index) const {
  return record(index).substr(0, 2);
}

std::string_view StationTable::region(std::size_t index) const {
  const std::string_view region = record(index).substr(2, 2);
  return region == "  " ? std::string_view{} : region;
}

Station StationTable::station(std::size_t index) const {
  Station station;
  station.name = name(index);
  station.country = country(index);
  station.region = region(index);
  station.number = record(index).substr(4, 12);
  station.position = position(index);
  station.elevation_m = i16(positions_ + position_bytes * index + 4);
  const std::size_t at = climates_ + climate_bytes * index;
  for (std::size_t m = 0; m < 12; ++m) {
    const int low = i16(at + 2 * m);
    const int range = static_cast<unsigned char>(bytes_[at + 24 + m]);
    station.normals.tmin_c[m] = low / 10.0;
    station.normals.tmax_c[m] = (low + range) / 10.0;
    station.rain_mm[m] = u16(at + 36 + 2 * m);
  }
  return station;
}

std::vector<StationTable::Near> StationTable::nearest(GeoPoint position, std::size_t count) const {
  count = std::min(count, size_);
  // A band of latitudes first: 111.1 km a degree, so what is outside it is farther than its width.
  for (double degrees = 4.0;; degrees *= 2) {
    std::vector<Near> found;
    for (std::size_t i = 0; i < size_; ++i) {
      const GeoPoint there = this->position(i);
      if (std::abs(there.latitude - position.latitude) > degrees) continue;
      found.push_back({i, bulbwright::distance_km(position, there)});
    }
    if (found.size() < count) continue;
    const auto nearer = [](const Near& a, const Near& b) {
      return a.distance_km != b.distance_km ? a.distance_km < b.distance_km : a.index < b.index;
    };
    std::partial_sort(found.begin(), found.begin() + static_cast<std::ptrdiff_t>(count),
                      found.end(), nearer);
    found.resize(count);
    if (found.empty() || found.back().distance_km <= degrees * 111.1 || degrees > 180.0) {
      return found;
    }
  }
}

bool StationTable::has_land(GeoPoint position) const {
  const int row =
      std::clamp(static_cast<int>((90.0 - position.latitude) / cell_degrees), 0, land_rows - 1);
  const int column = std::clamp(static_cast<int>((position.longitude + 180.0) / cell_degrees), 0,
                                land_columns - 1);
  const std::size_t at = land_rows_ + 2 * static_cast<std::size_t>(row);
  for (std::size_t run = u16(at); run < u16(at + 2); ++run) {
    if (u16(runs_ + 4 * run) <= column && column <= u16(runs_ + 4 * run + 2)) return true;
  }
  return false;
}

}  // namespace bulbwright
