#pragma once

#include <fstream>
#include <map>
#include <sstream>
#include <string>
#include <vector>

#include "base/csv.hpp"
#include "climate/climate.hpp"
#include "source_paths.hpp"

/// Reading of tests/vectors/climate_vectors.csv and of the weather files beside it.
namespace bulbwright::climate_vectors {

inline std::string file_text(const std::string& name) {
  std::ifstream file{bulbwright::fixture::source_path(std::string{"tests/vectors/"} + name),
                     std::ios::binary};
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

struct Vector {
  std::string id, function, quantity, source;
  std::map<std::string, std::string> inputs;
  double expected = 0.0;
  double tolerance = 0.0;

  [[nodiscard]] double number(const std::string& key) const { return std::stod(inputs.at(key)); }
  [[nodiscard]] std::string word(const std::string& key) const {
    const auto found = inputs.find(key);
    return found == inputs.end() ? std::string{} : found->second;
  }
};

inline std::vector<std::string> split(const std::string& text, char separator) {
  std::vector<std::string> parts;
  std::istringstream stream{text};
  for (std::string part; std::getline(stream, part, separator);) parts.push_back(part);
  return parts;
}

inline std::vector<Vector> all() {
  const CsvTable table = read_csv(file_text("climate_vectors.csv"), "climate_vectors.csv");
  std::vector<Vector> vectors;
  for (const CsvRecord& record : table.records) {
    const auto& f = record.fields;
    Vector v{f[0], f[1], f[3], f[7], {}, std::stod(f[4]), std::stod(f[6])};
    for (const std::string& pair : split(f[2], ';')) {
      const std::size_t equals = pair.find('=');
      v.inputs[pair.substr(0, equals)] = pair.substr(equals + 1);
    }
    vectors.push_back(v);
  }
  return vectors;
}

/// Hours of the months "Nov+Dec" of an hourly file, degC, in the order the months are named.
inline std::vector<double> hours_of(const std::string& file, const std::string& months) {
  const CsvTable table = read_csv(file_text("noaa/" + file), file);
  const std::map<std::string, std::string> numbers{
      {"Nov", "11"}, {"Dec", "12"}, {"Jan", "01"}, {"Feb", "02"}};
  std::vector<double> hours;
  for (const std::string& month : split(months, '+')) {
    for (const CsvRecord& record : table.records) {
      if (record.fields[0].substr(5, 2) != numbers.at(month)) continue;
      const double value = std::stod(record.fields[1]);
      hours.push_back(table.header[1] == "temp" ? from_fahrenheit(value).value() : value);
    }
  }
  return hours;
}

/// Days of weather.csv from `from` to `to` as a winter without neighbours.
inline Winter recorded_days(const std::string& location, double latitude, Day from, Day to) {
  const CsvTable table = read_csv(file_text("noaa/weather.csv"), "weather.csv");
  Winter winter{location, latitude, from, {}, {}};
  for (const CsvRecord& record : table.records) {
    const Day day = parse_day(record.fields[1]);
    if (record.fields[0] != location || day < from || day > to) continue;
    winter.days.push_back({std::stod(record.fields[3]), std::stod(record.fields[2]), true});
  }
  return winter;
}

}  // namespace bulbwright::climate_vectors
