// The "place" object of a pot file.
#include <array>

#include <fmt/core.h>

#include "climate/normals_check.hpp"
#include "input/pot_file_keys.hpp"
#include "input/pot_file_parts.hpp"

namespace bulbwright::input {
namespace {

using Months = std::array<double, 12>;

Field item_field(const ObjectReader& normals, const char* key, std::size_t month) {
  const Position at = normals.find(key)->items[month].at;
  return {item_path(normals.field(key).name, month), {normals.context().file, at.line, at.column}};
}

/// Twelve temperatures in degrees Celsius.
std::optional<Months> read_months(const ObjectReader& normals, const char* key, bool fahrenheit) {
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
    months[i] = fahrenheit ? from_fahrenheit(item.number).value() : item.number;
    if (item.kind == JsonKind::number) continue;
    faults.add(
        item_field(normals, key, i),
        fmt::format("{} where a number was expected, without unit", with_article(item.kind)));
    good = false;
  }
  return good ? std::optional{months} : std::nullopt;
}

/// A fault of the normals in the numbers and the unit that the grower wrote.
std::string words_of(const NormalsFault& fault, const ObjectReader& reader, bool fahrenheit) {
  const auto written = [&](const char* key) {
    return fmt::format("{} {}", bare(reader.find(key)->items[fault.month].text),
                       unit_words[fahrenheit ? 1 : 0]);
  };
  const auto bound = [&](Celsius value) {
    return fahrenheit ? fmt::format("{:g} F", value.value() * 1.8 + 32.0)
                      : fmt::format("{:g} C", value.value());
  };
  if (fault.kind == NormalsFault::Kind::not_below_maximum) {
    return fmt::format("{} is not below tmax[{}], {}", written("tmin"), fault.month,
                       written("tmax"));
  }
  const bool minimum = fault.kind == NormalsFault::Kind::minimum_out_of_range;
  return fmt::format("{} is no monthly mean; expected {} to {}", written(minimum ? "tmin" : "tmax"),
                     bound(least_monthly_mean), bound(most_monthly_mean));
}

std::optional<MonthlyNormals> read_normals(const JsonValue& value, ReadContext& context) {
  const ObjectReader reader{value, "place.normals", normals_keys, context};
  if (!reader.is_object()) return std::nullopt;
  reader.missing("unit", "expected \"C\" or \"F\"");
  const auto unit = reader.word("unit", unit_words, "unit of temperature");
  const bool fahrenheit = unit && *unit == 1;
  const auto tmin = read_months(reader, "tmin", fahrenheit);
  const auto tmax = read_months(reader, "tmax", fahrenheit);
  if (!unit || !tmin || !tmax) return std::nullopt;
  const MonthlyNormals normals{*tmin, *tmax};
  const std::vector<NormalsFault> faults = normals_faults(normals);
  for (const NormalsFault& fault : faults) {
    const bool maximum = fault.kind == NormalsFault::Kind::maximum_out_of_range;
    context.faults.add(item_field(reader, maximum ? "tmax" : "tmin", fault.month),
                       words_of(fault, reader, fahrenheit));
  }
  return faults.empty() ? std::optional{normals} : std::nullopt;
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

std::optional<std::string> read_zone_key(const ObjectReader& reader) {
  const JsonValue* zone = reader.find("zone");
  if (zone != nullptr && zone->kind == JsonKind::number) {
    reader.context().faults.add(
        reader.field("zone"),
        fmt::format("{0} is a bare number; did you mean \"{0}a\" or \"{0}b\"?", bare(zone->text)));
    return std::nullopt;
  }
  const std::string* text = reader.text("zone", "\"9b\"");
  if (text == nullptr) return std::nullopt;
  return read_zone(reader.field("zone"), *text, reader.context().faults);
}

}  // namespace

PlaceRequest read_place(const JsonValue& value, ReadContext& context) {
  PlaceRequest place;
  const ObjectReader reader{value, "place", place_keys, context};
  context.written_at["place"] = reader.self().place;
  place.zone = read_zone_key(reader);
  place.south = reader.truth("south").value_or(false);
  if (const auto region = reader.word<ZoneRegion>("region", "region")) {
    place.region = *region;
  }
  place.site = non_empty(reader, "site", "a station of `bulbwright places`");
  if (const std::string* near = reader.text("near", "\"38.58, -121.49\"")) {
    place.near = read_position(reader.field("near"), *near, context.faults);
  }
  if (const std::string* elevation = reader.text("elevation", "\"9 m\"")) {
    place.elevation =
        read_length(reader.field("elevation"), *elevation, height_of_place, context.faults);
  }
  if (const JsonValue* normals = reader.find("normals")) {
    place.normals = read_normals(*normals, context);
  }
  if (const std::string* offset = reader.text("offset", "\"1.2 C\"")) {
    place.offset = read_offset(reader.field("offset"), *offset, context.faults);
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
  if (const auto exposure = reader.word<Exposure>("exposure", "exposure")) {
    place.exposure = *exposure;
  }
  return place;
}

}  // namespace bulbwright::input
