#include "input/record_columns.hpp"

#include <algorithm>
#include <array>

#include <fmt/core.h>

#include "base/error.hpp"
#include "base/near_miss.hpp"
#include "base/text.hpp"

namespace bulbwright::input {
namespace {

class Header {
 public:
  Header(const std::string& file, const std::vector<std::string_view>& names) : file_{file} {
    for (const std::string_view name : names) names_.push_back(trimmed(name));
  }

  [[nodiscard]] std::optional<std::size_t> find(std::string_view name) const {
    const auto found = std::find(names_.begin(), names_.end(), name);
    if (found == names_.end()) return std::nullopt;
    if (std::find(found + 1, names_.end(), name) != names_.end()) {
      refuse(fmt::format("two columns are named {}", in_quotes(name)));
    }
    return static_cast<std::size_t>(found - names_.begin());
  }

  [[noreturn]] void refuse(const std::string& message) const {
    throw InputError{{file_, 1, 1}, message};
  }

  /// `stem`_c or `stem`_f; not both.
  [[nodiscard]] std::optional<TemperatureColumn> temperature(std::string_view stem) const {
    const auto celsius = find(fmt::format("{}_c", stem));
    const auto fahrenheit = find(fmt::format("{}_f", stem));
    if (celsius && fahrenheit) {
      refuse(fmt::format("both {0}_c and {0}_f are there; leave one out", stem));
    }
    if (celsius) return TemperatureColumn{*celsius, TemperatureUnit::celsius, {}};
    if (fahrenheit) return TemperatureColumn{*fahrenheit, TemperatureUnit::fahrenheit, {}};
    return std::nullopt;
  }

  [[nodiscard]] const std::vector<std::string_view>& names() const { return names_; }

 private:
  const std::string& file_;
  std::vector<std::string_view> names_;
};

/// Refuses a header that holds no temperatures, pointing at what it has instead.
[[noreturn]] void refuse_without_temperature(const Header& header) {
  constexpr std::array<std::string_view, 6> known{"temperature_c", "temperature_f", "tmin_c",
                                                  "tmax_c",        "tmin_f",        "tmax_f"};
  constexpr std::array<std::string_view, 13> unitless{
      "temperature", "temp", "t",        "tmin",     "tmax",     "temp_min", "temp_max",
      "min",         "max",  "min_temp", "max_temp", "air_temp", "tair"};
  for (const std::string_view name : header.names()) {
    std::string lower{name};
    for (char& c : lower) c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    if (std::find(unitless.begin(), unitless.end(), lower) != unitless.end()) {
      header.refuse(
          fmt::format("column {} has no unit; name it temperature_c or temperature_f "
                      "(hourly), tmin_c and tmax_c or tmin_f and tmax_f (daily)",
                      in_quotes(name)));
    }
  }
  for (const std::string_view name : header.names()) {
    const std::string hint = did_you_mean(name, known);
    if (!hint.empty())
      header.refuse(fmt::format("unknown temperature column {}{}", in_quotes(name), hint));
  }
  header.refuse(
      "no temperatures; expected a column temperature_c or temperature_f (hourly), or tmin_c and "
      "tmax_c, or tmin_f and tmax_f (daily)");
}

RecordColumns noaa_columns(const Header& header, std::size_t date) {
  RecordColumns columns;
  columns.date = date;
  columns.station = header.find("STATION");
  columns.latitude = header.find("LATITUDE");
  columns.name = header.find("NAME");
  const auto column = [&](const char* name, TemperatureUnit unit) {
    std::optional<TemperatureColumn> result;
    if (const auto index = header.find(name)) {
      result = {*index, unit, header.find(fmt::format("{}_ATTRIBUTES", name))};
    }
    return result;
  };
  columns.format = RecordFormat::ghcn_daily;
  columns.tmin = column("TMIN", TemperatureUnit::tenths_celsius);
  columns.tmax = column("TMAX", TemperatureUnit::tenths_celsius);
  if (columns.tmin && columns.tmax) return columns;
  columns.format = RecordFormat::gsod;
  columns.tmin = column("MIN", TemperatureUnit::fahrenheit);
  columns.tmax = column("MAX", TemperatureUnit::fahrenheit);
  if (columns.tmin && columns.tmax) return columns;
  header.refuse(
      "a station file without temperatures; expected TMAX and TMIN (GHCN-Daily) or MAX and MIN "
      "(GSOD)");
}

}  // namespace

RecordColumns find_record_columns(const std::string& file,
                                  const std::vector<std::string_view>& names) {
  const Header header{file, names};
  if (const auto date = header.find("DATE"); date && header.find("STATION")) {
    RecordColumns columns = noaa_columns(header, *date);
    columns.fields = names.size();
    return columns;
  }
  RecordColumns columns;
  columns.fields = names.size();
  const auto date = header.find("date"), time = header.find("time");
  if (!date && !time) {
    constexpr std::array<std::string_view, 2> known{"time", "date"};
    std::string hint;
    for (const std::string_view name : header.names()) {
      if (hint.empty()) hint = did_you_mean(name, known);
    }
    header.refuse(fmt::format("no column \"date\" or \"time\"{}", hint));
  }
  columns.date = date ? *date : *time;
  columns.temperature = header.temperature("temperature");
  columns.tmin = header.temperature("tmin");
  columns.tmax = header.temperature("tmax");
  if (columns.tmin && columns.tmax) {
    columns.format = RecordFormat::daily;
    columns.temperature.reset();  // a mean beside the extremes
    return columns;
  }
  if (columns.tmin || columns.tmax) {
    header.refuse(fmt::format("{} is there but {} is missing", columns.tmin ? "tmin" : "tmax",
                              columns.tmin ? "tmax_c or tmax_f" : "tmin_c or tmin_f"));
  }
  if (!columns.temperature) refuse_without_temperature(header);
  columns.format = RecordFormat::hourly;
  if (date && time) columns.time = time;
  return columns;
}

}  // namespace bulbwright::input
