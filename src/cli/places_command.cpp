#include "cli/places_command.hpp"

#include <memory>
#include <optional>

#include <fmt/format.h>

#include "base/error.hpp"
#include "base/quantity.hpp"
#include "cli/common_options.hpp"
#include "climate/place_near.hpp"
#include "climate/place_search.hpp"
#include "input/field_values.hpp"
#include "input/resolve.hpp"
#include "report/places_report.hpp"

namespace bulbwright::cli {
namespace {

struct PlacesOptions {
  CommonOptions common;
  std::vector<std::string> words;
  std::string near, elevation, zone, region, count;
  bool south = false;
};

std::optional<GeoPoint> position_of(const PlacesOptions& options) {
  if (options.near.empty()) return std::nullopt;
  try {
    return parse_position(options.near);
  } catch (const InvalidValue& fault) {
    throw InvalidValue{"--near", fault.expectation()};
  }
}

std::optional<double> elevation_of(const PlacesOptions& options) {
  if (options.elevation.empty()) return std::nullopt;
  try {
    return parse_length(options.elevation, LengthUse::height).value() / 1000.0;
  } catch (const InvalidValue& fault) {
    throw InvalidValue{"--elevation", fault.expectation()};
  }
}

std::size_t count_of(const PlacesOptions& options, std::size_t by_default) {
  if (options.count.empty()) return by_default;
  try {
    return static_cast<std::size_t>(parse_whole_number(options.count, 1, 10000));
  } catch (const InvalidValue& fault) {
    throw InvalidValue{"--count", fault.expectation()};
  }
}

void add(report::PlacesReport& report, const std::vector<PlaceSearch::Found>& found) {
  for (const PlaceSearch::Found& one : found) {
    report.places.push_back(one.place);
    if (one.distance_km) report.distance_km.push_back(*one.distance_km);
  }
}

/// The places of the catalogue alone where nothing is asked: the stations are too many to list.
void find_all(report::PlacesReport& report, const PlaceCatalogue& places,
              const PlaceSearch& search) {
  for (const Place& place : places.places()) report.places.push_back(search.with_rain(place));
  report.question = "All places of the catalogue (words or --near find thousands more)";
}

void find_by_words(report::PlacesReport& report, const PlaceSearch& search,
                   const PlacesOptions& options) {
  const std::string text = fmt::format("{}", fmt::join(options.words, " "));
  const std::optional<GeoPoint> position = position_of(options);
  add(report, search.with_words(text, position, count_of(options, 10000)));
  report.question = fmt::format("Places with {}", bulbwright::in_quotes(text));
  if (position) report.question += fmt::format(", nearest to {} first", to_text(*position));
  if (!report.places.empty()) return;
  try {
    report.places.push_back(search.find(text));  // tells the near miss
  } catch (const InvalidValue& fault) {
    throw InvalidValue{"places", fault.expectation()};
  }
}

void find_zone(report::PlacesReport& report, const PlaceCatalogue& places,
               const PlaceSearch& search, const PlacesOptions& options) {
  ZoneRegion region = ZoneRegion::all;
  if (!options.region.empty()) {
    input::Faults faults;
    region = input::read_word<ZoneRegion>({"--region", {}}, options.region, "region", faults)
                 .value_or(region);
    faults.throw_if_any();
  }
  try {
    report.profile = places.zone_profile(options.zone, options.south, region);
    for (const Place* place : places.zone_stations(options.zone, options.south, region)) {
      report.places.push_back(search.with_rain(*place));
    }
  } catch (const InvalidValue& fault) {
    throw InvalidValue{"--zone", fault.expectation()};
  }
  report.question = fmt::format("Stations of {}", report.profile->name);
}

void find_near(report::PlacesReport& report, const PlaceCatalogue& places,
               const StationTable& stations, const PlacesOptions& options) {
  const GeoPoint position = *position_of(options);
  try {
    report.profile = place_near(stations, places.places(), position, elevation_of(options));
  } catch (const InvalidValue& fault) {
    throw InvalidValue{"--" + fault.field(), fault.expectation()};
  }
  add(report, PlaceSearch{places, stations}.nearest(position, count_of(options, 10)));
  report.question = fmt::format("The nearest to {}", to_text(position));
}

report::AskedFlags flags_of(const PlacesOptions& options) {
  report::AskedFlags flags;
  if (!options.words.empty())
    flags.emplace_back("words", fmt::format("{}", fmt::join(options.words, " ")));
  const report::AskedFlags others{{"near", options.near},
                                  {"elevation", options.elevation},
                                  {"count", options.count},
                                  {"zone", options.zone},
                                  {"region", options.region}};
  for (const auto& flag : others) {
    if (!flag.second.empty()) flags.push_back(flag);
  }
  if (options.south) flags.emplace_back("south", "true");
  return flags;
}

CommandResult run(const PlacesOptions& options, const Terminal& terminal,
                  input::InputFiles& inputs) {
  const std::string format = format_of(options.common);
  if (!options.zone.empty() && (!options.near.empty() || !options.words.empty())) {
    throw InvalidValue{"places", "--zone is another question than words and --near; give one"};
  }
  if (options.zone.empty() && (options.south || !options.region.empty())) {
    throw InvalidValue{options.south ? "--south" : "--region", "goes with --zone"};
  }
  if (options.near.empty() && !options.elevation.empty()) {
    throw InvalidValue{"--elevation", "goes with --near"};
  }
  if (options.near.empty() && options.words.empty() && !options.count.empty()) {
    throw InvalidValue{"--count", "goes with --near or words"};
  }
  const PlaceCatalogue places = input::load_places(options.common.data, inputs);
  report::PlacesReport report;
  report.request = flags_of(options);
  const StationTable stations = StationTable::builtin();
  const PlaceSearch search{places, stations};
  if (!options.zone.empty()) {
    find_zone(report, places, search, options);
  } else if (!options.words.empty()) {
    find_by_words(report, search, options);
  } else if (!options.near.empty()) {
    find_near(report, places, stations, options);
  } else {
    find_all(report, places, search);
  }
  CommandResult result;
  result.out = options.common.out;
  if (format == "json") {
    result.document = report::places_json(report);
  } else if (format == "csv") {
    result.document = report::places_csv(report);
  } else {
    result.document = report::places_text(report, text_style(options.common, terminal));
  }
  return result;
}

}  // namespace

Command places_command() {
  auto options = std::make_shared<PlacesOptions>();
  Command command{"places", "The climates that the program knows", {}, {}, {}};
  OptionGroup{command.options, ""}.repeated(
      "words", options->words, "WORD ...",
      "words of a name, state or country; a code (US) or zone (9b)");
  OptionGroup search{command.options, "Search"};
  search.text("--near", options->near, "LAT,LON",
              "the climate at a position and the places around it");
  search.text("--elevation", options->elevation, "LENGTH", "of that position: \"9 m\"");
  search.text("--count", options->count, "N", "how many of them (10)");
  search.text("--zone", options->zone, "ZONE", "profile of a zone, 4a to 11b, and its stations");
  search.text("--region", options->region, "WORD", "north-american, maritime or continental");
  search.flag("--south", options->south, "the zone lies in the south");
  declare_common(command.options, options->common, {"text", "json", "csv"});
  command.footer =
      "Example:\n  bulbwright places --near \"37.8, -122.4\" --elevation \"20 m\" --count 3\n\n"
      "Exit status: 0 done; 2 wrong input or usage; 3 writing failed.";
  command.run = [options](const Terminal& terminal, input::InputFiles& inputs) {
    return run(*options, terminal, inputs);
  };
  return command;
}

}  // namespace bulbwright::cli
