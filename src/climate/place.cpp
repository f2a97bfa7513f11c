#include "climate/place.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include <fmt/core.h>

#include "base/csv_row.hpp"
#include "climate/normals_check.hpp"

namespace bulbwright {
namespace {

constexpr double most_rain_mm = 5000.0;  // no month has had more than twice this; from memory
constexpr double least_c = least_monthly_mean.value(), most_c = most_monthly_mean.value();

/// Columns of a places file by what they hold, under their names or those that older files use.
struct Columns {
  std::size_t name, latitude, longitude, source;
  std::array<std::size_t, 12> tmin, tmax;
  std::optional<std::array<std::size_t, 12>> rain;
  std::optional<std::size_t> country, elevation, zone, zone_estimated, confidence;

  explicit Columns(const CsvTable& table)
      : name{needed(table, "name", "site")},
        latitude{needed(table, "latitude", "lat")},
        longitude{needed(table, "longitude", "lon")},
        source{table.column("source")},
        tmin{months(table, "tmin_c", "tmin")},
        tmax{months(table, "tmax_c", "tmax")},
        country{table.find_column("country")},
        elevation{wished(table, "elevation_m", "elev_m")},
        zone{wished(table, "zone", "usda_zone")},
        zone_estimated{table.find_column("zone_estimated")},
        confidence{table.find_column("confidence")} {
    if (table.find_column("rain_mm_01")) rain = months(table, "rain_mm", "rain_mm");
  }

 private:
  static std::optional<std::size_t> wished(const CsvTable& table, std::string_view name,
                                           std::string_view older) {
    const auto found = table.find_column(name);
    return found ? found : table.find_column(older);
  }
  static std::size_t needed(const CsvTable& table, std::string_view name, std::string_view older) {
    const auto found = wished(table, name, older);
    return found ? *found : table.column(name);  // which tells that it is missing
  }
  static std::array<std::size_t, 12> months(const CsvTable& table, std::string_view stem,
                                            std::string_view older) {
    std::array<std::size_t, 12> columns{};
    for (std::size_t m = 0; m < 12; ++m) {
      columns[m] = needed(table, fmt::format("{}_{:02}", stem, m + 1),
                          fmt::format("{}_{:02}", older, m + 1));
    }
    return columns;
  }
};

void read_zone(CsvRow& row, const Columns& columns, Place& place) {
  std::string_view zone = row.text(*columns.zone);
  if (zone.ends_with('~')) {
    place.zone_estimated = true;
    zone.remove_suffix(1);
  }
  if (columns.zone_estimated) {
    const std::string& estimated = row.text(*columns.zone_estimated);
    place.zone_estimated = place.zone_estimated || estimated == "true";
    if (!estimated.empty() && estimated != "true" && estimated != "false") {
      row.fault(*columns.zone_estimated,
                fmt::format("is {}; expected true or false", in_quotes(estimated)));
    }
  }
  if (zone.empty()) return;
  try {
    zone_bounds(zone);
    place.zone = zone;
  } catch (const InvalidValue& invalid) {
    row.fault(*columns.zone, fmt::format("is {}", invalid.expectation()));
  }
}

/// Rain of all twelve months, or of none where the first is empty.
void read_rain(CsvRow& row, const std::array<std::size_t, 12>& columns, Place& place) {
  if (row.text(columns.front()).empty()) return;
  place.rain_mm.emplace();
  for (std::size_t m = 0; m < 12; ++m) {
    (*place.rain_mm)[m] = row.number(columns[m], 0.0, most_rain_mm, "mm").value_or(0.0);
  }
}

void read_normals(CsvRow& row, const Columns& columns, MonthlyNormals& normals) {
  for (std::size_t m = 0; m < 12; ++m) {
    const auto low = row.number(columns.tmin[m], least_c, most_c, "degC");
    const auto high = row.number(columns.tmax[m], least_c, most_c, "degC");
    if (low && high && *low >= *high) {
      row.fault(columns.tmin[m],
                fmt::format("is {}, not below the month's maximum, {}", *low, *high));
    }
    normals.tmin_c[m] = low.value_or(0.0);
    normals.tmax_c[m] = high.value_or(0.0);
  }
}

Place read_place(CsvRow& row, const Columns& columns) {
  Place place;
  place.name = row.required(columns.name, "a name");
  place.latitude = row.number(columns.latitude, -90.0, 90.0).value_or(0.0);
  place.longitude = row.number(columns.longitude, -180.0, 180.0).value_or(0.0);
  place.source = row.required(columns.source, "where the figures come from");
  if (columns.country) place.country = row.text(*columns.country);
  if (columns.confidence) place.confidence = row.text(*columns.confidence);
  if (columns.elevation && !row.text(*columns.elevation).empty()) {
    place.elevation_m = row.number(*columns.elevation, -500.0, 9000.0, "m");
  }
  if (columns.zone) read_zone(row, columns, place);
  if (columns.rain) read_rain(row, *columns.rain, place);
  read_normals(row, columns, place.normals);
  return place;
}

}  // namespace

Hemisphere hemisphere_of(const Place& place) {
  return place.latitude < 0.0 ? Hemisphere::south : Hemisphere::north;
}

std::array<double, 12> monthly_means(const MonthlyNormals& normals) {
  std::array<double, 12> means{};
  for (std::size_t m = 0; m < 12; ++m) means[m] = (normals.tmin_c[m] + normals.tmax_c[m]) / 2;
  return means;
}

double annual_range_k(const MonthlyNormals& normals) {
  const auto means = monthly_means(normals);
  const auto [low, high] = std::minmax_element(means.begin(), means.end());
  return *high - *low;
}

bool is_maritime(const MonthlyNormals& normals) {
  return rounded(annual_range_k(normals), 1e-6) <= maritime_range_k;
}

std::vector<Place> parse_places_csv(std::string_view text, const std::string& file) {
  CsvTable table = read_csv(text, file);
  const Columns columns{table};
  std::vector<InputFault> faults;
  std::vector<Place> places;
  std::map<std::string_view, int> lines;  // views into the records
  places.reserve(table.records.size());
  for (CsvRecord& record : table.records) {
    CsvRow row{table, record, faults};
    places.push_back(read_place(row, columns));
    const std::string& name = row.text(columns.name);
    const auto [before, fresh] = lines.emplace(name, record.line);
    if (!fresh && !name.empty()) {
      row.fault(columns.name,
                fmt::format("{} stands on line {} already", in_quotes(name), before->second));
    }
  }
  throw_if_any(std::move(faults));
  return places;
}

}  // namespace bulbwright
