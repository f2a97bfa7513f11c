#include "climate/place.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>

#include <fmt/core.h>

#include "base/csv.hpp"

namespace bulbwright {
namespace {

constexpr double least_c = -70.0, most_c = 60.0;  // beyond every monthly mean on earth

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
        country{optional(table, "country")},
        elevation{optional(table, "elev_m")},
        zone{optional(table, "usda_zone")},
        confidence{optional(table, "confidence")} {
    for (std::size_t m = 0; m < 12; ++m) {
      tmin[m] = table.column(fmt::format("tmin_{:02}", m + 1));
      tmax[m] = table.column(fmt::format("tmax_{:02}", m + 1));
    }
  }

 private:
  static std::optional<std::size_t> optional(const CsvTable& table, std::string_view name) {
    const auto found = std::find(table.header.begin(), table.header.end(), name);
    if (found == table.header.end()) return std::nullopt;
    return static_cast<std::size_t>(found - table.header.begin());
  }
};

/// Reads one record and gathers its faults.
class RecordReader {
 public:
  RecordReader(const CsvTable& table, const CsvRecord& record, std::vector<InputFault>& faults)
      : table_{table}, record_{record}, faults_{faults} {}

  [[nodiscard]] const std::string& text(std::size_t column) const { return record_.fields[column]; }

  [[nodiscard]] std::string required_text(std::size_t column) {
    if (text(column).empty()) fault(column, "empty; expected some text");
    return text(column);
  }

  double number(std::size_t column, double least, double most) {
    const std::string& field = text(column);
    double value = 0.0;
    const char* end = field.data() + field.size();
    const auto [stop, error] = std::from_chars(field.data(), end, value, std::chars_format::fixed);
    if (error != std::errc{} || stop != end || !(value >= least && value <= most)) {
      fault(column, fmt::format("{} is no number from {} to {}", in_quotes(field), least, most));
      return 0.0;
    }
    return value;
  }

  void fault(std::size_t column, const std::string& message) {
    faults_.push_back(
        {{table_.file, record_.line, 1}, fmt::format("{}: {}", table_.header[column], message)});
  }

 private:
  const CsvTable& table_;
  const CsvRecord& record_;
  std::vector<InputFault>& faults_;
};

void read_zone(RecordReader& record, std::size_t column, Place& place) {
  std::string_view zone = record.text(column);
  if (zone.ends_with('~')) {
    place.zone_estimated = true;
    zone.remove_suffix(1);
  }
  if (zone.empty()) return;
  try {
    zone_bounds(zone);
    place.zone = zone;
  } catch (const InvalidValue& invalid) {
    record.fault(column, invalid.expectation());
  }
}

Place read_place(RecordReader& record, const Columns& columns) {
  Place place;
  place.name = record.required_text(columns.site);
  place.latitude = record.number(columns.latitude, -90.0, 90.0);
  place.longitude = record.number(columns.longitude, -180.0, 180.0);
  place.source = record.required_text(columns.source);
  if (columns.country) place.country = record.text(*columns.country);
  if (columns.confidence) place.confidence = record.text(*columns.confidence);
  if (columns.elevation && !record.text(*columns.elevation).empty()) {
    place.elevation_m = record.number(*columns.elevation, -500.0, 9000.0);
  }
  if (columns.zone) read_zone(record, *columns.zone, place);
  for (std::size_t m = 0; m < 12; ++m) {
    double& low = place.normals.tmin_c[m];
    double& high = place.normals.tmax_c[m];
    low = record.number(columns.tmin[m], least_c, most_c);
    high = record.number(columns.tmax[m], least_c, most_c);
    if (low >= high && (low != 0.0 || high != 0.0)) {
      record.fault(columns.tmin[m], fmt::format("{} is not below {} of {}", low, high,
                                                fmt::format("tmax_{:02}", m + 1)));
    }
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

void check_normals(const MonthlyNormals& normals) {
  const auto check = [](double value, const char* name, std::size_t m) {
    if (value >= least_c && value <= most_c) return;
    throw InvalidValue{
        fmt::format("{}[{}]", name, m),
        fmt::format("{:g} degC is no monthly mean; expected {} to {}", value, least_c, most_c)};
  };
  for (std::size_t m = 0; m < 12; ++m) {
    check(normals.tmin_c[m], "tmin", m);
    check(normals.tmax_c[m], "tmax", m);
    if (normals.tmin_c[m] < normals.tmax_c[m]) continue;
    throw InvalidValue{
        fmt::format("tmin[{}]", m),
        fmt::format("{:g} is not below tmax[{}], {:g}", normals.tmin_c[m], m, normals.tmax_c[m])};
  }
}

std::vector<Place> parse_places_csv(std::string_view text, const std::string& file) {
  const CsvTable table = read_csv(text, file);
  const Columns columns{table};
  std::vector<InputFault> faults;
  std::vector<Place> places;
  places.reserve(table.records.size());
  for (const CsvRecord& record : table.records) {
    RecordReader reader{table, record, faults};
    places.push_back(read_place(reader, columns));
  }
  std::vector<std::pair<std::string_view, int>> names;
  for (std::size_t i = 0; i < places.size(); ++i) {
    names.emplace_back(places[i].name, table.records[i].line);
  }
  std::sort(names.begin(), names.end());
  for (std::size_t i = 1; i < names.size(); ++i) {
    if (names[i].first != names[i - 1].first || names[i].first.empty()) continue;
    faults.push_back({{file, names[i].second, 1},
                      fmt::format("site: {} stands on line {} already", in_quotes(names[i].first),
                                  names[i - 1].second)});
  }
  if (faults.empty()) return places;
  std::stable_sort(faults.begin(), faults.end(), [](const InputFault& a, const InputFault& b) {
    return a.place.line < b.place.line;
  });
  throw InputError{std::move(faults)};
}

}  // namespace bulbwright
