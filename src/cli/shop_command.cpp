#include "cli/shop_command.hpp"

#include <algorithm>
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "base/error.hpp"
#include "cli/common_options.hpp"
#include "cli/effort_option.hpp"
#include "cli/pot_options.hpp"
#include "input/resolve.hpp"
#include "plan/needs.hpp"
#include "plan/planner.hpp"
#include "report/shop_report.hpp"
#include "shopping/shopping.hpp"

namespace bulbwright::cli {
namespace {

struct ShopOptions {
  CommonOptions common;
  PotOptions pot;  ///< place, dates, storage and winter, laid over every file
  std::vector<std::string> files;
  std::string effort = "quick";
};

/// One pot of the list, read and resolved.
struct Pot {
  std::string file;
  input::LocatedRequest asked;
  PlaceSeason place_season;
};

bool reads_standard_input(const input::LocatedRequest& asked) {
  return asked.request.place && asked.request.place->records_file == "-";
}

/// All files, so that the faults of all are told at once. @throws InputError
std::vector<Pot> read_pots(const ShopOptions& options, const input::Facts& facts,
                           input::InputFiles& inputs) {
  std::vector<Pot> pots;
  std::vector<InputFault> faults;
  bool input_is_taken = std::count(options.files.begin(), options.files.end(), "-") > 0;
  for (const std::string& file : options.files) {
    try {
      input::Faults found;
      input::LocatedRequest asked = pot_request(file, options.pot, inputs, Need::all, found);
      if (reads_standard_input(asked)) {
        if (input_is_taken) {
          found.add({input::fault_at(asked, "place.records", "standard input is read once")});
          asked.request.place->records_file.reset();
        }
        input_is_taken = true;
      }
      PlaceSeason place_season = input::resolve(asked, facts, inputs, std::move(found));
      pots.push_back({file, std::move(asked), std::move(place_season)});
    } catch (const InputError& error) {
      faults.insert(faults.end(), error.faults().begin(), error.faults().end());
    }
  }
  if (!faults.empty()) throw InputError{std::move(faults)};
  return pots;
}

CommandResult run(const ShopOptions& options, const Terminal& terminal, input::InputFiles& inputs) {
  if (options.files.empty()) {
    throw InvalidValue{"shop", "no pot file; give one or more, for instance examples/steps.json"};
  }
  if (std::count(options.files.begin(), options.files.end(), "-") > 1)
    throw InvalidValue{"shop", "standard input is read once; give - once"};
  const std::string format = format_of(options.common);
  const report::TextStyle style = text_style(options.common, terminal);
  const input::Facts facts = input::load_facts(options.common.data, inputs);
  const std::vector<Pot> pots = read_pots(options, facts, inputs);

  CommandResult result;
  result.out = options.common.out;
  PackingCache packings;
  std::vector<PotNeeds> needs;
  terminal.progress->begin("pot", static_cast<int>(pots.size()));
  for (const Pot& pot : pots) {
    const Plan plan = input::with_faults_located(pot.asked, [&] {
      return make_plan(
          pot.asked.request,
          input::context_of(facts, pot.place_season, effort_named(options.effort), packings));
    });
    if (!plan.ok) result.exit_code = exit_cannot;
    needs.push_back(needs_of(plan, facts.catalogue, pot.file));
    terminal.progress->next();
  }
  const ShoppingList list = shopping_list(std::move(needs), facts.packs);
  if (format == "json") {
    std::vector<Request> requests;
    for (const Pot& pot : pots) requests.push_back(pot.asked.request);
    result.document = report::shop_json(list, requests);
  } else if (format == "csv") {
    result.document = report::shop_csv(list);
  } else {
    result.document = report::shop_text(list, style);
  }
  for (const Pot& pot : pots) {
    if (options.common.quiet) break;
    for (const std::string& remark : pot.asked.remarks)
      result.remarks += "bulbwright: " + path_in_quotes(pot.file) + ": " + remark + "\n";
  }
  if (result.exit_code != exit_done) {
    for (const PotNeeds& pot : list.pots) {
      if (!pot.ok && !options.common.quiet) {
        result.remarks += "bulbwright: shop: nothing listed for " + path_in_quotes(pot.file) +
                          ", which cannot be planted as asked\n";
      }
    }
  }
  return result;
}

}  // namespace

Command shop_command() {
  auto options = std::make_shared<ShopOptions>();
  Command command{
      "shop", "What to buy for any number of pots: bulbs, spares, packs, mix", {}, {}, {}};
  OptionGroup{command.options, ""}.repeated("file", options->files, "FILE...",
                                            "pot files (JSON; '-': standard input)");
  PotOptionGroups groups;
  groups.pot = groups.layers = false;
  declare_pot(command.options, options->pot, groups);
  declare_effort(command.options, options->effort);
  declare_common(command.options, options->common, {"text", "json", "csv"});
  command.footer =
      "Example:\n  bulbwright shop examples/steps.json --format csv\n\n"
      "Flags are laid over every file. Exit status: 0 done; 1 a pot cannot be planted\n"
      "as asked (the rest is listed); 2 wrong input; 3 writing failed.";
  command.run = [options](const Terminal& terminal, input::InputFiles& inputs) {
    return run(*options, terminal, inputs);
  };
  return command;
}

}  // namespace bulbwright::cli
