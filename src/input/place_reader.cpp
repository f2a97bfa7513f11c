// The "place" object of a pot file.
#include <array>

#include <fmt/format.h>

#include "input/pot_file_keys.hpp"
#include "input/pot_file_parts.hpp"

namespace bulbwright::input {
namespace {

constexpr std::array month_names{"January",   "February", "March",    "April",
                                 "May",       "June",     "July",     "August",
                                 "September", "October",  "November", "December"};
/// Monthly means beyond these are no climate of this planet. Source: from memory; the coldest
/// inhabited places have January means near -50 C, the hottest July maxima near 48 C.
constexpr double least_mean_c = -60.0;
constexpr double most_mean_c = 60.0;

using Months = std::array<double, 12>;

/// Twelve temperatures in degrees Celsius.
std::optional<Months> read_months(const ObjectReader& normals, std::string_view key,
                                  bool fahrenheit) {
  normals.missing(key, "expected twelve monthly means, January first");
  const JsonValue* array = normals.array(key);
  if (array == nullptr) return std::nullopt;
  Faults& faults = normals.context().faults;
  if (array->items.size() != 12) {
    faults.add(normals.field(key),
               fmt::format("{} values; expected twelve, January first", array->items.size()));
    return std::nullopt;
  }
  Months months{};
  bool good = true;
  for (std::size_t i = 0; i < 12; ++i) {
    const JsonValue& item = array->items[i];
    const Field field{item_path(normals.field(key).name, i),
                      {normals.context().file, item.at.line, item.at.column}};
    if (item.kind != JsonKind::number) {
      faults.add(field, fmt::format("{} where a number was expected, without unit",
                                    with_article(item.kind)));
      good = false;
      continue;
    }
    months[i] = fahrenheit ? from_fahrenheit(item.number).value() : item.number;
    if (months[i] >= least_mean_c && months[i] <= most_mean_c) continue;
    faults.add(field, fmt::format("{} is out of range; expected a monthly mean of -60 to 60 C "
                                  "(-76 to 140 F)",
                                  bare(item.text)));
    good = false;
  }
  return good ? std::optional{months} : std::nullopt;
}

std::optional<MonthlyNormals> read_normals(const JsonValue& value, ReadContext& context) {
  const ObjectReader normals{value, "place.normals", normals_keys, context};
  if (!normals.is_object()) return std::nullopt;
  normals.missing("unit", "expected \"C\" or \"F\"");
  const auto unit = normals.word("unit", unit_words, "unit of temperature");
  const bool fahrenheit = unit && *unit == 1;
  const auto tmin = read_months(normals, "tmin", fahrenheit);
  const auto tmax = read_months(normals, "tmax", fahrenheit);
  if (!unit || !tmin || !tmax) return std::nullopt;
  for (std::size_t i = 0; i < 12; ++i) {
    if ((*tmin)[i] <= (*tmax)[i]) continue;
    context.faults.add(
        normals.field("tmax"),
        fmt::format("{} is colder by day than by night; tmin is above tmax", month_names[i]));
    return std::nullopt;
  }
  return MonthlyNormals{*tmin, *tmax};
}

std::optional<std::string> non_empty(const ObjectReader& reader, std::string_view key,
                                     const char* expected) {
  auto text = reader.plain_text(key);
  if (text && trimmed(*text).empty()) {
    reader.context().faults.add(reader.field(key), fmt::format("empty; expected {}", expected));
    return std::nullopt;
  }
  return text;
}

}  // namespace

PlaceRequest read_place(const JsonValue& value, ReadContext& context) {
  PlaceRequest place;
  const ObjectReader reader{value, "place", place_keys, context};
  context.places["place"] = reader.self().place;
  if (const std::string* zone = reader.text("zone", "\"9b\"")) {
    place.zone = read_zone(reader.field("zone"), *zone, context.faults);
  }
  place.south = reader.truth("south").value_or(false);
  place.site = non_empty(reader, "site", "a station of `bulbwright places`");
  if (const JsonValue* normals = reader.find("normals")) {
    place.normals = read_normals(*normals, context);
  }
  if (const std::string* file = reader.text("records", "\"winter.csv\"")) {
    if (file->empty()) {
      context.faults.add(reader.field("records"), "empty; expected the name of a CSV file");
    } else if (file->find('\0') != std::string::npos) {
      context.faults.add(reader.field("records"), "a file name cannot hold a NUL");
    } else {
      place.records_file = *file;
    }
  }
  place.latitude = reader.number("latitude", -90.0, 90.0);
  if (const auto exposure = reader.word("exposure", exposure_words, "exposure")) {
    place.exposure = static_cast<Exposure>(*exposure);
  }
  return place;
}

}  // namespace bulbwright::input
