#include "cli/season_command.hpp"

#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "base/error.hpp"
#include "cli/common_options.hpp"
#include "cli/effort_option.hpp"
#include "cli/plan_many.hpp"
#include "cli/pot_files.hpp"
#include "cli/pot_options.hpp"
#include "input/field_values.hpp"
#include "plan/planner.hpp"
#include "report/season_report.hpp"
#include "season/season.hpp"

namespace bulbwright::cli {
namespace {

struct SeasonOptions {
  CommonOptions common;
  PotOptions pot;  ///< place, dates, storage and winter, laid over every file
  std::vector<std::string> files;
  std::optional<std::string> drawer, hours;
  std::string by = "day";
  std::string effort = "quick";
};

constexpr double least_drawer = 0.1, most_drawer = 100'000.0;

SeasonAsk ask_of(const SeasonOptions& options) {
  SeasonAsk ask;
  input::Faults faults;
  if (options.drawer) {
    try {
      ask.drawer = parse_volume(*options.drawer);
      if (*ask.drawer < Litres{least_drawer} || *ask.drawer > Litres{most_drawer}) {
        faults.add(input::Field{"--drawer", {}},
                   in_quotes(*options.drawer) + " is out of range; expected 0.1 to 100000 litres");
      }
    } catch (const InvalidValue& fault) {
      faults.add(input::Field{"--drawer", {}}, fault.what());
    }
  }
  if (options.hours) {
    ask.hours_a_day =
        input::read_decimal(input::Field{"--hours", {}}, *options.hours, 0.5, 24.0, faults);
  }
  faults.throw_if_any();
  return ask;
}

/// The pot's own name, else that of its file without folder and ending.
std::string name_of(const PotFile& pot) {
  if (pot.ok() && !pot.asked.request.pot.name.empty()) return pot.asked.request.pot.name;
  const std::string stem = std::filesystem::path{pot.file}.stem().string();
  return stem.empty() || pot.file == "-" ? "standard input" : stem;
}

/// The faults of a file in one line.
std::string told(const std::vector<InputFault>& faults) {
  std::string text;
  for (const InputFault& fault : faults) text += (text.empty() ? "" : "; ") + fault.message;
  return text;
}

std::string remarks_on_all(const std::vector<PotFile>& files, const Season& season) {
  std::string remarks;
  for (std::size_t i = 0; i < files.size(); ++i) {
    remarks += remarks_on(files[i]);
    if (season.pots[i].ok()) continue;
    if (!files[i].ok()) remarks += describe(InputError{files[i].faults});
    remarks += "bulbwright: season: " + path_in_quotes(files[i].file) +
               (files[i].ok() ? " cannot be planted as asked; it is left out\n"
                              : " cannot be planned; it is left out\n");
  }
  return remarks;
}

CommandResult run(const SeasonOptions& options, const Terminal& terminal,
                  input::InputFiles& inputs) {
  check_pot_files("season", options.files,
                  "give one or more, or a folder of them, for instance examples");
  const std::string format = format_of(options.common);
  const report::TextStyle style = text_style(options.common, terminal);
  const SeasonAsk ask = ask_of(options);
  const input::Facts facts = input::load_facts(options.common.data, inputs);
  std::vector<PotFile> files = read_pot_files(pot_files(options.files), options.pot, facts, inputs);
  PackingCache packings;
  const Effort effort = effort_named(options.effort);
  const auto plans = plan_many(files, facts, effort, packings, *terminal.progress);

  std::vector<SeasonPot> pots;
  for (std::size_t i = 0; i < files.size(); ++i)
    pots.push_back(
        {name_of(files[i]), files[i].file, files[i].group, plans[i], told(files[i].faults)});
  const Replan replan = [&](std::size_t pot, Day plant) -> std::shared_ptr<const Plan> {
    const PotFile& file = files[pot];
    const PlaceSeason& place = *file.place_season;
    if (season_of(plant, place.hemisphere) != place.season) return nullptr;
    Request request = file.asked.request;
    request.plant = plant;
    return std::make_shared<const Plan>(
        make_plan(request, input::context_of(facts, place, effort, packings)));
  };
  const Season season =
      make_season(std::move(pots), ask, {facts.catalogue, facts.packs, facts.cautions, replan});

  CommandResult result;
  result.out = options.common.out;
  if (format == "json") {
    result.document = report::season_json(season);
  } else if (format == "jsonl") {
    result.document = report::season_json_lines(season);
  } else if (format == "csv") {
    result.document = report::season_csv(season);
  } else {
    const auto view = options.by == "week" ? report::SeasonView::weeks : report::SeasonView::days;
    result.document = report::season_text(season, view, style);
  }
  if (!season.ok()) result.exit_code = exit_cannot;
  if (!options.common.quiet) result.remarks = remarks_on_all(files, season);
  return result;
}

}  // namespace

Command season_command() {
  auto options = std::make_shared<SeasonOptions>();
  Command command{"season", "All pots together: jobs, refrigerator, filling, flowers", {}, {}, {}};
  OptionGroup{command.options, ""}.repeated("file", options->files, "FILE|FOLDER...",
                                            "pot files (JSON; '-': standard input), or folders");
  OptionGroup season{command.options, "Season"};
  season.text("--drawer", options->drawer, "VOLUME", "room in the refrigerator: \"12 l\"");
  season.text("--hours", options->hours, "N", "hours a day there are for filling pots");
  season.choice("--by", options->by, {"day", "week"}, "jobs by day or by week, in text");
  PotOptionGroups groups;
  groups.pot = groups.layers = false;
  declare_pot(command.options, options->pot, groups);
  declare_effort(command.options, options->effort);
  declare_common(command.options, options->common, {"text", "json", "jsonl", "csv"});
  command.footer =
      "Example:\n  bulbwright season examples/*.json --drawer \"12 l\"\n\n"
      "Flags are laid over every file; a folder stands for the .json files in it. Exit\n"
      "status: 0 done; 1 a pot cannot be planned (it is named, the rest is done); 2 wrong\n"
      "input; 3 writing failed.";
  command.run = [options](const Terminal& terminal, input::InputFiles& inputs) {
    return run(*options, terminal, inputs);
  };
  return command;
}

}  // namespace bulbwright::cli
