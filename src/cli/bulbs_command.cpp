#include "cli/bulbs_command.hpp"

#include <algorithm>
#include <memory>
#include <string>
#include <vector>

#include <fmt/core.h>

#include "base/error.hpp"
#include "base/near_miss.hpp"
#include "cli/common_options.hpp"
#include "input/resolve.hpp"
#include "report/bulbs_report.hpp"

namespace bulbwright::cli {
namespace {

struct BulbsOptions {
  CommonOptions common;
  std::vector<std::string> ids;
};

/// The taxa asked for, each once, in that order; all of them where none is.
/// @throws InputError naming every unknown id.
std::vector<const Taxon*> asked_for(const Catalogue& catalogue,
                                    const std::vector<std::string>& ids) {
  std::vector<const Taxon*> taxa;
  if (ids.empty()) {
    for (const Taxon& taxon : catalogue.taxa()) taxa.push_back(&taxon);
    return taxa;
  }
  std::vector<InputFault> faults;
  for (const std::string& id : ids) {
    const Taxon* taxon = catalogue.find(id);
    if (taxon == nullptr) {
      faults.push_back({{"", 0, 0},
                        fmt::format("bulbs: unknown taxon {}{}", bulbwright::in_quotes(id),
                                    did_you_mean(id, catalogue.ids()))});
    } else if (std::find(taxa.begin(), taxa.end(), taxon) == taxa.end()) {
      taxa.push_back(taxon);
    }
  }
  if (!faults.empty()) throw InputError{std::move(faults)};
  return taxa;
}

CommandResult run(const BulbsOptions& options, const Terminal& terminal,
                  input::InputFiles& inputs) {
  const std::string format = format_of(options.common);
  const report::TextStyle style = text_style(options.common, terminal);
  const Catalogue catalogue = input::load_facts(options.common.data, inputs).catalogue;
  const std::vector<const Taxon*> taxa = asked_for(catalogue, options.ids);
  CommandResult result;
  result.out = options.common.out;
  if (format == "json") {
    result.document = report::bulbs_json(taxa, options.ids);
  } else if (format == "csv") {
    result.document = report::bulbs_csv(taxa);
  } else if (options.ids.empty()) {
    result.document = report::bulbs_list_text(taxa, style);
  } else {
    for (const Taxon* taxon : taxa) {
      if (!result.document.empty()) result.document += "\n";
      result.document += report::taxon_text(*taxon, style);
    }
  }
  return result;
}

}  // namespace

Command bulbs_command() {
  auto options = std::make_shared<BulbsOptions>();
  Command command{"bulbs",
                  "The kinds of bulbs it knows; one kind with every figure and its source",
                  {},
                  {},
                  {}};
  OptionGroup{command.options, ""}.repeated("id", options->ids, "[ID...]",
                                            "kinds to tell all about, such as tulip-triumph");
  declare_common(command.options, options->common, {"text", "json", "csv"});
  command.footer = "Example:\n  bulbwright bulbs tulip-triumph";
  command.run = [options](const Terminal& terminal, input::InputFiles& inputs) {
    return run(*options, terminal, inputs);
  };
  return command;
}

}  // namespace bulbwright::cli
