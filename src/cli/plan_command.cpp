#include "cli/plan_command.hpp"

#include <memory>
#include <optional>

#include "base/error.hpp"
#include "cli/common_options.hpp"
#include "cli/effort_option.hpp"
#include "cli/pot_options.hpp"
#include "input/place_resolver.hpp"
#include "input/pot_file_writer.hpp"
#include "input/resolve.hpp"
#include "plan/planner.hpp"
#include "report/plan_json.hpp"
#include "report/sheet/sheet.hpp"

namespace bulbwright::cli {
namespace {

struct PlanOptions {
  CommonOptions common;
  PotOptions pot;
  std::optional<std::string> file;
  std::string effort = "quick";
  std::optional<std::string> save;
  bool force = false;
};

OutputFile saved_pot(const input::LocatedRequest& asked, const std::string& file,
                     bool may_replace) {
  return {file, input::write_pot_file(input::moved_to(file, asked.request, asked)), may_replace};
}

CommandResult run(const PlanOptions& options, const Terminal& terminal, input::InputFiles& inputs) {
  const std::string format = format_of(options.common);
  const report::TextStyle style = text_style(options.common, terminal);
  if (options.save && (options.save->empty() || *options.save == "-"))
    throw InputError{{"", 0, 0}, "--save: expected the name of a file, such as pot.json"};
  const input::Facts facts = input::load_facts(options.common.data, inputs);
  input::Faults faults;
  const input::LocatedRequest asked =
      pot_request(options.file, options.pot, inputs, Need::all, faults);
  const PlaceSeason place_season = input::resolve(asked, facts, inputs, std::move(faults));
  PackingCache packings;
  const Plan plan = input::with_faults_located(asked, [&] {
    return make_plan(asked.request, input::context_of(facts, place_season,
                                                      effort_named(options.effort), packings));
  });
  CommandResult result;
  result.out = options.common.out;
  result.document = format == "json" ? report::plan_json(plan) : report::plan_text(plan, style);
  if (options.save) result.files.push_back(saved_pot(asked, *options.save, options.force));
  if (!plan.ok) result.exit_code = exit_cannot;
  return result;
}

}  // namespace

Command plan_command() {
  auto options = std::make_shared<PlanOptions>();
  Command command{"plan", "Plan one pot: counts, depths, cold, dates, shopping", {}, {}, {}};
  OptionGroup{command.options, ""}.text("file", options->file, "[FILE]",
                                        "pot file ('-': standard input); flags win over it");
  declare_pot(command.options, options->pot);
  declare_effort(command.options, options->effort);
  OptionGroup output{command.options, "Output"};
  output.text("--save", options->save, "FILE", "also write the pot file that the flags amount to");
  output.flag("--force", options->force, "let --save replace a file that differs");
  declare_common(command.options, options->common, {"text", "json"});
  command.footer =
      "Example:\n"
      "  bulbwright plan --top \"15 in\" --base \"12 in\" --height \"14 in\" --zone 9b \\\n"
      "      --layer tulip-triumph --layer narcissus-large-cupped \\\n"
      "      --layer crocus-large --plant 2027-01-08\n\n"
      "Layers are given in planting order, bottom first. Exit status: 0 done; 1 cannot\n"
      "be carried out (still printed); 2 wrong input; 3 writing failed.";
  command.run = [options](const Terminal& terminal, input::InputFiles& inputs) {
    return run(*options, terminal, inputs);
  };
  return command;
}

}  // namespace bulbwright::cli
