#include "cli/places_command.hpp"

#include <charconv>
#include <memory>
#include <numeric>

#include <fmt/core.h>

#include "base/error.hpp"
#include "base/quantity.hpp"
#include "cli/common_options.hpp"
#include "input/field_values.hpp"
#include "input/resolve.hpp"
#include "report/places_report.hpp"

namespace bulbwright::cli {
namespace {

struct PlacesOptions {
  CommonOptions common;
  std::vector<std::string> words;
  std::string near, zone, region, count;
  bool south = false;
};

struct Position {
  double latitude = 0.0;
  double longitude = 0.0;
};

Position parse_position(const std::string& text) {
  Position position;
  const char* const end = text.data() + text.size();
  const auto latitude =
      std::from_chars(text.data(), end, position.latitude, std::chars_format::fixed);
  const char* at = latitude.ptr;
  while (at != end && (*at == ',' || *at == ' ')) ++at;
  const auto longitude = std::from_chars(at, end, position.longitude, std::chars_format::fixed);
  const bool read = latitude.ec == std::errc{} && at != latitude.ptr &&
                    longitude.ec == std::errc{} && longitude.ptr == end;
  if (!read || !(std::abs(position.latitude) <= 90.0) || !(std::abs(position.longitude) <= 180.0)) {
    throw InvalidValue{"--near",
                       fmt::format("{} is no position; expected latitude and longitude in "
                                   "degrees, such as \"37.8, -122.4\"",
                                   bulbwright::in_quotes(text))};
  }
  return position;
}

void add_all(report::PlacesReport& report, const std::vector<const Place*>& places) {
  for (const Place* place : places) report.places.push_back(*place);
}

void find_by_words(report::PlacesReport& report, const PlaceCatalogue& places,
                   const std::vector<std::string>& words) {
  std::string text;
  for (const std::string& word : words) text += (text.empty() ? "" : " ") + word;
  add_all(report, places.search(text));
  report.question =
      text.empty() ? "All places" : fmt::format("Places with {}", bulbwright::in_quotes(text));
  if (report.places.empty()) report.places.push_back(places.find(text));  // tells the near miss
}

void find_zone(report::PlacesReport& report, const PlaceCatalogue& places,
               const PlacesOptions& options) {
  ZoneRegion region = ZoneRegion::all;
  if (!options.region.empty()) {
    input::Faults faults;
    region = input::read_word<ZoneRegion>({"--region", {}}, options.region, "region", faults)
                 .value_or(region);
    faults.throw_if_any();
  }
  try {
    report.profile = places.zone_profile(options.zone, options.south, region);
    add_all(report, places.zone_stations(options.zone, options.south, region));
  } catch (const InvalidValue& fault) {
    throw InvalidValue{"--zone", fault.expectation()};
  }
  report.question = fmt::format("Stations of {}", report.profile->name);
}

void find_near(report::PlacesReport& report, const PlaceCatalogue& places,
               const PlacesOptions& options) {
  const Position position = parse_position(options.near);
  std::size_t count = 10;
  try {
    if (!options.count.empty()) {
      count = static_cast<std::size_t>(parse_whole_number(options.count, 1, 10000));
    }
  } catch (const InvalidValue& fault) {
    throw InvalidValue{"--count", fault.expectation()};
  }
  for (const auto& near : places.nearest(position.latitude, position.longitude, count)) {
    report.places.push_back(*near.place);
    report.distance_km.push_back(near.distance_km);
  }
  report.question = fmt::format("The nearest to {:.2f}, {:.2f}", rounded(position.latitude, 0.01),
                                rounded(position.longitude, 0.01));
}

CommandResult run(const PlacesOptions& options, const Terminal& terminal,
                  input::InputFiles& inputs) {
  const int ways = (options.near.empty() ? 0 : 1) + (options.zone.empty() ? 0 : 1) +
                   (options.words.empty() ? 0 : 1);
  if (ways > 1) {
    throw InvalidValue{"places",
                       "words, --near and --zone are three ways to ask; give one of them"};
  }
  if (options.zone.empty() && (options.south || !options.region.empty())) {
    throw InvalidValue{options.south ? "--south" : "--region", "goes with --zone"};
  }
  if (options.near.empty() && !options.count.empty()) {
    throw InvalidValue{"--count", "goes with --near"};
  }
  const PlaceCatalogue places = input::load_places(options.common.data, inputs);
  report::PlacesReport report;
  if (!options.near.empty()) {
    find_near(report, places, options);
  } else if (!options.zone.empty()) {
    find_zone(report, places, options);
  } else {
    find_by_words(report, places, options.words);
  }
  CommandResult result;
  result.out = options.common.out;
  if (options.common.format == "json") {
    result.document = report::places_json(report);
  } else if (options.common.format == "csv") {
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
  OptionGroup{command.options, ""}.repeated("words", options->words, "WORD ...",
                                            "words of a name, a country (US, GB) or a zone (9b)");
  OptionGroup search{command.options, "Search"};
  search.text("--near", options->near, "LAT,LON", "nearest places to a position: \"37.8, -122.4\"");
  search.text("--count", options->count, "N", "how many of them (10)");
  search.text("--zone", options->zone, "ZONE", "profile of a zone, 4a to 11b, and its stations");
  search.text("--region", options->region, "WORD", "north-american, maritime or continental");
  search.flag("--south", options->south, "the zone lies in the south");
  declare_common(command.options, options->common, {"text", "json", "csv"});
  command.footer =
      "Example:\n  bulbwright places --near \"37.8, -122.4\" --count 3\n\n"
      "Exit status: 0 done; 2 wrong input or usage; 3 writing failed.";
  command.run = [options](const Terminal& terminal, input::InputFiles& inputs) {
    return run(*options, terminal, inputs);
  };
  return command;
}

}  // namespace bulbwright::cli
