#include "cli/cold_command.hpp"

#include <memory>
#include <optional>

#include <fmt/core.h>

#include "base/error.hpp"
#include "cli/common_options.hpp"
#include "cli/pot_options.hpp"
#include "cold/cold_answer.hpp"
#include "cold/pot_temperature.hpp"
#include "input/place_resolver.hpp"
#include "input/records_reader.hpp"
#include "input/resolve.hpp"
#include "report/cold_report.hpp"

namespace bulbwright::cli {
namespace {

struct ColdOptions {
  CommonOptions common;
  std::optional<std::string> file;
  PotOptions pot;
  std::string from, to;
};

/// A day, or a day of every year.
struct End {
  std::optional<Day> day;
  std::optional<MonthDay> yearly;
};

End parse_end(const char* option, const std::string& text) {
  try {
    if (text.size() == 5) return {std::nullopt, parse_month_day(text)};
    return {parse_day(text), std::nullopt};
  } catch (const InvalidValue& fault) {
    throw InvalidValue{option, fault.expectation()};
  }
}

/// The days asked for; nothing where the half year of the hemisphere is wanted.
std::optional<ColdPeriod> period_of(const ColdOptions& options) {
  if (options.from.empty() && options.to.empty()) return std::nullopt;
  if (options.from.empty() || options.to.empty()) {
    throw InvalidValue{options.from.empty() ? "--from" : "--to",
                       "missing; --from and --to go together"};
  }
  const End from = parse_end("--from", options.from), to = parse_end("--to", options.to);
  if (from.day.has_value() != to.day.has_value()) {
    throw InvalidValue{"--to",
                       "one end has a year, the other none; give both as dates, or both as "
                       "days of every year such as 11-01"};
  }
  if (from.yearly) return ColdPeriod{std::nullopt, *from.yearly, *to.yearly};
  if (*to.day < *from.day) {
    throw InvalidValue{"--to",
                       fmt::format("{} is before --from, {}", to_iso(*to.day), to_iso(*from.day))};
  }
  return ColdPeriod{DayWindow{*from.day, *to.day}, {}, {}};
}

Pot pot_of(const PotRequest& pot) {
  return pot.top || !pot.profile.empty() ? make_pot(pot) : example_pot();
}

ColdReport answer(const input::LocatedRequest& asked, const std::optional<Place>& place,
                  const ColdQuestion& question, input::InputFiles& inputs) {
  if (!asked.request.place->records_file) return cold_answer(*place, question);
  const auto record = [&](const DaySink& sink) {
    return input::read_records_of(asked, inputs, sink);
  };
  return cold_answer(record, place, input::latitude_of(asked, place), question);
}

CommandResult run(const ColdOptions& options, const Terminal& terminal, input::InputFiles& inputs) {
  const std::string format = format_of(options.common);
  input::Faults faults;
  input::LocatedRequest asked =
      pot_request(options.file, options.pot, inputs, Need::whatever_is_given, faults);
  const PlaceCatalogue places = input::load_places(options.common.data, inputs);
  const std::optional<Place> place = input::resolve_place(asked, places, faults);
  faults.throw_if_any();
  const std::optional<PlaceRequest>& where = asked.request.place;
  if (!where ||
      (!where->zone && !where->site && !where->near && !where->normals && !where->records_file)) {
    throw InvalidValue{"cold",
                       "no place is given; name one with --near, --site, --zone or --records, or "
                       "a pot file with a place"};
  }
  asked.written_at["from"] = SourcePlace{"--from", 0, 0};
  asked.written_at["to"] = SourcePlace{"--to", 0, 0};
  const ColdQuestion question{pot_of(asked.request.pot), where->exposure, period_of(options)};
  CommandResult result;
  result.out = options.common.out;
  ColdReport report;
  try {
    report = answer(asked, place, question, inputs);
  } catch (const InvalidValue& fault) {
    throw InputError{{input::fault_at(asked, fault.field(), fault.expectation())}};
  }
  if (format == "json") {
    result.document = report::cold_json(report, asked.request);
  } else if (format == "csv") {
    result.document = report::cold_csv(report);
  } else {
    result.document = report::cold_text(report, text_style(options.common, terminal));
  }
  return result;
}

}  // namespace

Command cold_command() {
  auto options = std::make_shared<ColdOptions>();
  Command command{"cold", "What a winter gives a pot, month by month", {}, {}, {}};
  OptionGroup{command.options, ""}.text("file", options->file, "FILE",
                                        "pot file with place and pot (else the example pot)");
  PotOptionGroups groups;
  groups.dates = groups.layers = groups.storage = groups.winter = false;
  declare_pot(command.options, options->pot, groups);
  OptionGroup days{command.options, "Days"};
  days.text("--from", options->from, "DAY", "first day: 2026-11-01, or 11-01 of every year");
  days.text("--to", options->to, "DAY", "last day (by default of the winter half year)");
  declare_common(command.options, options->common, {"text", "json", "csv"});
  command.footer =
      "Example:\n  bulbwright cold --site \"San Francisco\" --from 2026-11-01 --to 2027-02-28\n\n"
      "Exit status: 0 done; 2 wrong input or usage; 3 writing failed.";
  command.run = [options](const Terminal& terminal, input::InputFiles& inputs) {
    return run(*options, terminal, inputs);
  };
  return command;
}

}  // namespace bulbwright::cli
