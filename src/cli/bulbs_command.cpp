#include "cli/bulbs_command.hpp"

#include <algorithm>
#include <memory>
#include <string>
#include <vector>

#include <fmt/format.h>

#include "base/error.hpp"
#include "catalogue/kind_filter.hpp"
#include "catalogue/kind_words.hpp"
#include "cli/common_options.hpp"
#include "input/field_values.hpp"
#include "input/resolve.hpp"
#include "report/bulbs_report.hpp"

namespace bulbwright::cli {
namespace {

struct BulbsOptions {
  CommonOptions common;
  std::vector<std::string> words;
  std::vector<std::string> eaten_by;
  std::optional<std::string> cold, height;
};

/// "..30 cm", "20 cm..", "10 cm..30 cm", or "10..30 cm", where the unit holds for both ends.
void read_heights(const std::string& text, KindFilter& filter, input::Faults& faults) {
  const input::Field field{"--height", {}};
  const std::size_t dots = text.find("..");
  std::string low{trimmed(std::string_view{text}.substr(0, dots))};
  const std::string high{
      dots == std::string::npos ? "" : trimmed(std::string_view{text}.substr(dots + 2))};
  if (dots == std::string::npos || (low.empty() && high.empty())) {
    faults.add(field, fmt::format("{} is no range of heights; expected something like \"..30 cm\", "
                                  "\"40 cm..\" or \"10..30 cm\"",
                                  in_quotes(text)));
    return;
  }
  if (plain_number(low) && !high.empty()) {
    low += high.substr(std::min(high.find_first_not_of("0123456789. "), high.size()));
  }
  if (!low.empty()) {
    filter.least_height = input::read_length(field, low, input::small_length, faults);
  }
  if (!high.empty()) {
    filter.most_height = input::read_length(field, high, input::small_length, faults);
  }
}

KindFilter filter_of(const BulbsOptions& options) {
  input::Faults faults;
  KindFilter filter;
  if (options.cold) {
    filter.cold =
        input::read_word<ColdWish>({"--cold", {}}, *options.cold, "wish for cold", faults);
  }
  for (std::string_view text : each_of(options.eaten_by)) {
    const bool spared = text.starts_with('-');
    if (spared) text.remove_prefix(1);
    const auto pest = input::read_word<Pest>({"--eaten-by", {}}, text, "known pest", faults);
    if (pest) (spared ? filter.not_eaten_by : filter.eaten_by).push_back(*pest);
  }
  if (options.height) read_heights(*options.height, filter, faults);
  faults.throw_if_any();
  return filter;
}

/// What was asked for, and whether each word means one kind alone.
struct Asked {
  std::vector<const Taxon*> taxa;
  bool one_by_one = true;
};

/// The kinds that the words mean, each once, in that order; all of them where there is no word.
/// Several words may be one name, `bulbs grape hyacinth`, unless they are ids.
/// @throws InputError naming every word that means none.
Asked asked_for(const Catalogue& catalogue, std::vector<std::string> words) {
  const bool all_ids = std::all_of(words.begin(), words.end(), [&](const std::string& word) {
    return catalogue.find(word) != nullptr;
  });
  if (words.size() > 1 && !all_ids) {
    std::string name = fmt::format("{}", fmt::join(words, " "));
    if (!kinds_called(catalogue, name).empty()) words = {std::move(name)};
  }
  Asked asked;
  if (words.empty()) {
    asked.one_by_one = false;
    for (const Taxon& taxon : catalogue.taxa()) asked.taxa.push_back(&taxon);
  }
  std::vector<InputFault> faults;
  for (const std::string& word : words) {
    const std::vector<const Taxon*> kinds = kinds_called(catalogue, word);
    if (kinds.size() != 1) asked.one_by_one = false;
    for (const Taxon* taxon : kinds) {
      if (std::find(asked.taxa.begin(), asked.taxa.end(), taxon) == asked.taxa.end()) {
        asked.taxa.push_back(taxon);
      }
    }
    if (!kinds.empty()) continue;
    try {
      (void)kind_called(catalogue, word);  // tells the near miss
    } catch (const InvalidValue& fault) {
      faults.push_back({{"", 0, 0}, "bulbs: " + fault.expectation()});
    }
  }
  if (!faults.empty()) throw InputError{std::move(faults)};
  return asked;
}

report::AskedFlags flags_of(const BulbsOptions& options) {
  report::AskedFlags flags;
  if (options.cold) flags.emplace_back("cold", *options.cold);
  if (!options.eaten_by.empty()) {
    flags.emplace_back("eaten_by", fmt::format("{}", fmt::join(options.eaten_by, ",")));
  }
  if (options.height) flags.emplace_back("height", *options.height);
  return flags;
}

CommandResult run(const BulbsOptions& options, const Terminal& terminal,
                  input::InputFiles& inputs) {
  const std::string format = format_of(options.common);
  const report::TextStyle style = text_style(options.common, terminal);
  const KindFilter filter = filter_of(options);
  const Catalogue catalogue = input::load_facts(options.common.data, inputs).catalogue;
  Asked asked = asked_for(catalogue, options.words);
  std::erase_if(asked.taxa, [&](const Taxon* taxon) { return !passes(*taxon, filter); });
  CommandResult result;
  result.out = options.common.out;
  if (asked.taxa.empty()) {
    result.exit_code = exit_cannot;
    result.remarks = "bulbwright: bulbs: no kind of the catalogue is like that\n";
  }
  if (format == "json") {
    result.document = report::bulbs_json(asked.taxa, options.words, flags_of(options));
  } else if (format == "csv") {
    result.document = report::bulbs_csv(asked.taxa);
  } else if (!asked.one_by_one || !filter.is_open()) {
    result.document = report::bulbs_list_text(asked.taxa, style);
  } else {
    for (const Taxon* taxon : asked.taxa) {
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
  OptionGroup{command.options, ""}.repeated(
      "words", options->words, "[WORD...]",
      "ids or names: tulip-triumph, grape hyacinth, daffodil, Tulipa");
  OptionGroup wishes{command.options, "Only kinds that"};
  wishes.text("--cold", options->cold, "none|dry-ok|moist-only",
              "flower without any cold, take it dry, or potted");
  wishes.repeated("--eaten-by", options->eaten_by, "[-]PEST,...",
                  "deer, gopher, vole … eat; -deer: rarely eat");
  wishes.text("--height", options->height, "FROM..TO", "are so high in flower: \"..30 cm\"");
  declare_common(command.options, options->common, {"text", "json", "csv"});
  command.footer =
      "Examples:\n  bulbwright bulbs tulip-triumph\n"
      "  bulbwright bulbs daffodil --cold none --eaten-by -deer --height \"..40 cm\"\n\n"
      "Exit status: 0 done; 1 no kind is like that; 2 wrong input; 3 writing failed.";
  command.run = [options](const Terminal& terminal, input::InputFiles& inputs) {
    return run(*options, terminal, inputs);
  };
  return command;
}

}  // namespace bulbwright::cli
