#include "cli/shop_command.hpp"

#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "base/error.hpp"
#include "cli/common_options.hpp"
#include "cli/effort_option.hpp"
#include "cli/plan_many.hpp"
#include "cli/pot_files.hpp"
#include "cli/pot_options.hpp"
#include "input/resolve.hpp"
#include "plan/needs.hpp"
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

CommandResult run(const ShopOptions& options, const Terminal& terminal, input::InputFiles& inputs) {
  check_pot_files("shop", options.files, "give one or more, for instance examples/steps.json");
  const std::string format = format_of(options.common);
  const report::TextStyle style = text_style(options.common, terminal);
  const input::Facts facts = input::load_facts(options.common.data, inputs);
  std::vector<PotFile> pots = read_pot_files(options.files, options.pot, facts, inputs);
  throw_if_any_fault(pots);
  PackingCache packings;
  const auto plans =
      plan_many(pots, facts, effort_named(options.effort), packings, *terminal.progress);
  throw_if_any_fault(pots);

  CommandResult result;
  result.out = options.common.out;
  std::vector<PotNeeds> needs;
  for (std::size_t i = 0; i < pots.size(); ++i) {
    if (!plans[i]->ok) result.exit_code = exit_cannot;
    needs.push_back(needs_of(*plans[i], facts.catalogue, pots[i].file));
  }
  const ShoppingList list = shopping_list(std::move(needs), facts.packs);
  if (format == "json") {
    std::vector<Request> requests;
    for (const PotFile& pot : pots) requests.push_back(pot.asked.request);
    result.document = report::shop_json(list, requests);
  } else if (format == "csv") {
    result.document = report::shop_csv(list);
  } else {
    result.document = report::shop_text(list, style);
  }
  if (!options.common.quiet) {
    for (const PotFile& pot : pots) result.remarks += remarks_on(pot);
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
