#include "cli/suggest_command.hpp"

#include <memory>
#include <optional>

#include <fmt/core.h>

#include "base/error.hpp"
#include "cli/common_options.hpp"
#include "cli/effort_option.hpp"
#include "cli/pot_options.hpp"
#include "cli/suggest_options.hpp"
#include "input/field_values.hpp"
#include "input/place_resolver.hpp"
#include "input/pot_file_writer.hpp"
#include "input/request_check.hpp"
#include "input/resolve.hpp"
#include "report/suggest_report.hpp"
#include "suggest/suggestion.hpp"

namespace bulbwright::cli {
namespace {

struct SuggestOptions {
  CommonOptions common;
  PotOptions pot;
  WishOptions wish;
  std::optional<std::string> file, write;
  bool force = false;
  std::string effort = "quick";
};

/// Pot and place, with the window as the wanted flowering, which tells the season.
input::LocatedRequest request_of(const SuggestOptions& options, input::InputFiles& inputs,
                                 input::Faults& faults) {
  input::LocatedRequest asked =
      pot_request(options.file, options.pot, inputs, Need::all_but_layers, faults);
  asked.request.layers.clear();
  if (!options.wish.window) return asked;
  asked.request.flower = input::read_window({"--window", {}}, *options.wish.window, faults);
  asked.written_at["flower"] = SourcePlace{"--window", 0, 0};
  asked.request.plant.reset();
  if (!options.pot.season) asked.request.season.reset();
  // The window is laid in after the request was judged; without a zone resolve() judges it.
  const auto hemisphere = asked.request.place ? input::hemisphere_of(*asked.request.place)
                                              : std::optional<Hemisphere>{};
  if (hemisphere) faults.add(input::season_faults(asked, *hemisphere));
  return asked;
}

void add_pot_files(const SuggestOptions& options, const input::LocatedRequest& asked,
                   const Suggestions& suggestions, CommandResult& result) {
  if (!options.write) return;
  for (std::size_t i = 0; i < suggestions.found.size(); ++i) {
    const std::string file = fmt::format("{}/stack-{}.json", *options.write, i + 1);
    const Request pot = input::moved_to(file, suggestions.found[i].request, asked);
    result.files.push_back({file, input::write_pot_file(pot), options.force});
  }
}

CommandResult run(const SuggestOptions& options, const Terminal& terminal,
                  input::InputFiles& inputs) {
  const std::string format = format_of(options.common);
  const report::TextStyle style = text_style(options.common, terminal);
  if (options.write && options.write->empty())
    throw InputError{{"", 0, 0}, "--write: expected the name of a folder"};
  const input::Facts facts = input::load_facts(options.common.data, inputs);
  SuggestionWish wish = wish_of(options.wish, facts.catalogue);
  input::Faults faults;
  input::LocatedRequest asked = request_of(options, inputs, faults);
  const PlaceSeason place_season = input::resolve(asked, facts, inputs, std::move(faults));
  wish.window =
      asked.request.flower.value_or(season_days(place_season.season, place_season.hemisphere));
  PackingCache packings;
  const Suggestions suggestions = input::with_faults_located(asked, [&] {
    return suggest(asked.request, wish,
                   input::context_of(facts, place_season, effort_named(options.effort), packings));
  });

  CommandResult result;
  result.out = options.common.out;
  result.document = format == "json" ? report::suggest_json(suggestions)
                                     : report::suggest_text(suggestions, style);
  add_pot_files(options, asked, suggestions, result);
  if (suggestions.found.empty()) result.exit_code = exit_cannot;
  return result;
}

}  // namespace

Command suggest_command() {
  auto options = std::make_shared<SuggestOptions>();
  Command command{"suggest", "Which stacks of kinds suit a pot, a place and a time", {}, {}, {}};
  OptionGroup{command.options, ""}.text("file", options->file, "[FILE]",
                                        "pot file for pot and place, not for layers");
  declare_wish(command.options, options->wish);
  PotOptionGroups groups;
  groups.dates = groups.layers = false;
  declare_pot(command.options, options->pot, groups);
  OptionGroup{command.options, "Wishes"}.text("--season", options->pot.season, "YEAR",
                                              "of the autumn, where --window does not tell");
  declare_effort(command.options, options->effort);
  OptionGroup output{command.options, "Output"};
  output.text("--write", options->write, "DIR", "write each stack as a pot file into this folder");
  output.flag("--force", options->force, "let --write replace files that differ");
  declare_common(command.options, options->common, {"text", "json"});
  command.footer =
      "Example:\n"
      "  bulbwright suggest --top \"15 in\" --height \"14 in\" --zone 9b \\\n"
      "      --window 2027-02-15..2027-04-30 --not-eaten-by deer --write pots\n\n"
      "Exit status: 0 done; 1 nothing suits; 2 wrong input; 3 writing failed.";
  command.run = [options](const Terminal& terminal, input::InputFiles& inputs) {
    return run(*options, terminal, inputs);
  };
  return command;
}

}  // namespace bulbwright::cli
