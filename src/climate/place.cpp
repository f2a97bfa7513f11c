#include "climate/place.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include <fmt/core.h>

#include "base/csv_row.hpp"
#include "climate/normals_check.hpp"

namespace bulbwright {
namespace {

constexpr double least_c = least_monthly_mean.value(), most_c = most_monthly_mean.value();

/// Columns of a places file by what they hold.
struct Columns {
  std::size_t site, latitude, longitude, source;
  std::array<std::size_t, 12> tmin, tmax;
  std::optional<std::size_t> country, elevation, zone, confidence;

  explicit Columns(const CsvTable& table)
      : site{table.column("site")},
        latitude{table.column("lat")},
        longitude{table.column("lon")},
        source{table.column("source")},
        country{table.find_column("country")},
        elevation{table.find_column("elev_m")},
        zone{table.find_column("usda_zone")},
        confidence{table.find_column("confidence")} {
    for (std::size_t m = 0; m < 12; ++m) {
      tmin[m] = table.column(fmt::format("tmin_{:02}", m + 1));
      tmax[m] = table.column(fmt::format("tmax_{:02}", m + 1));
    }
  }
};

void read_zone(CsvRow& row, std::size_t column, Place& place) {
  std::string_view zone = row.text(column);
  if (zone.ends_with('~')) {
    place.zone_estimated = true;
    zone.remove_suffix(1);
  }
  if (zone.empty()) return;
  try {
    zone_bounds(zone);
    place.zone = zone;
  } catch (const InvalidValue& invalid) {
    row.fault(column, fmt::format("is {}", invalid.expectation()));
  }
}

Place read_place(CsvRow& row, const Columns& columns) {
  Place place;
  place.name = row.required(columns.site, "a name");
  place.latitude = row.number(columns.latitude, -90.0, 90.0).value_or(0.0);
  place.longitude = row.number(columns.longitude, -180.0, 180.0).value_or(0.0);
  place.source = row.required(columns.source, "where the figures come from");
  if (columns.country) place.country = row.text(*columns.country);
  if (columns.confidence) place.confidence = row.text(*columns.confidence);
  if (columns.elevation && !row.text(*columns.elevation).empty()) {
    place.elevation_m = row.number(*columns.elevation, -500.0, 9000.0, "m");
  }
  if (columns.zone) read_zone(row, *columns.zone, place);
  for (std::size_t m = 0; m < 12; ++m) {
    const auto low = row.number(columns.tmin[m], least_c, most_c, "degC");
    const auto high = row.number(columns.tmax[m], least_c, most_c, "degC");
    if (low && high && *low >= *high) {
      row.fault(columns.tmin[m],
                fmt::format("is {}, not below {} of tmax_{:02}", *low, *high, m + 1));
    }
    place.normals.tmin_c[m] = low.value_or(0.0);
    place.normals.tmax_c[m] = high.value_or(0.0);
  }
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
    const std::string& name = row.text(columns.site);
    const auto [before, fresh] = lines.emplace(name, record.line);
    if (!fresh && !name.empty()) {
      row.fault(columns.site,
                fmt::format("{} stands on line {} already", in_quotes(name), before->second));
    }
  }
  throw_if_any(std::move(faults));
  return places;
}

}  // namespace bulbwright
