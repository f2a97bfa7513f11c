#include "cli/plan_command.hpp"

#include <memory>
#include <optional>

#include <CLI/CLI.hpp>

#include "bulbwright/planner.hpp"
#include "cli/common_options.hpp"
#include "cli/effort_option.hpp"
#include "cli/pot_options.hpp"
#include "input/resolve.hpp"
#include "report/plan_json.hpp"
#include "report/plan_text.hpp"

namespace bulbwright::cli {
namespace {

struct PlanOptions {
  CommonOptions common;
  PotOptions pot;
  std::optional<std::string> file;
  std::string effort = "quick";
};

CommandResult run(const PlanOptions& options, const Terminal& terminal) {
  const report::TextStyle style = text_style(options.common, terminal);
  const PotFile request = pot_request(options.file, options.pot);
  const input::Facts facts = input::load_facts(options.common.data);
  const Setting setting = input::resolve(request, facts);
  PackingCache packings;
  const Plan plan = make_plan(request, {&facts.catalogue, &facts.blooms, &setting,
                                        effort_named(options.effort), &packings});
  CommandResult result;
  result.out = options.common.out;
  if (options.file) result.inputs.push_back(*options.file);
  result.document =
      options.common.format == "json" ? report::plan_json(plan) : report::plan_text(plan, style);
  if (!plan.ok) result.exit_code = exit_cannot;
  return result;
}

}  // namespace

Command declare_plan(CLI::App& root) {
  auto options = std::make_shared<PlanOptions>();
  CLI::App* app =
      root.add_subcommand("plan", "Plan one pot: counts, depths, cold, dates, shopping");
  app->add_option("file", options->file, "pot file (JSON; '-': standard input); flags win over it")
      ->option_text("[FILE]");
  declare_pot(*app, options->pot);
  declare_effort(*app, options->effort);
  declare_common(*app, options->common, {"text", "json"});
  app->footer(
      "Example:\n"
      "  bulbwright plan --top \"15 in\" --base \"12 in\" --height \"14 in\" --zone 9b \\\n"
      "      --layer tulip-triumph --layer narcissus-large-cupped \\\n"
      "      --layer crocus-large --plant 2027-01-08\n\n"
      "Layers are given in planting order, bottom first. Exit status: 0 done; 1 the plan\n"
      "cannot be carried out (still printed); 2 wrong input; 3 writing failed.");
  return {app, [options](const Terminal& terminal) { return run(*options, terminal); }};
}

}  // namespace bulbwright::cli
