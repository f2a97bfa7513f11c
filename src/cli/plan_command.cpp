#include "cli/plan_command.hpp"

#include <algorithm>
#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <fmt/core.h>

#include "base/error.hpp"
#include "cli/common_options.hpp"
#include "cli/effort_option.hpp"
#include "cli/plan_many.hpp"
#include "cli/pot_files.hpp"
#include "cli/pot_options.hpp"
#include "cli/variants.hpp"
#include "input/place_resolver.hpp"
#include "input/pot_file_writer.hpp"
#include "input/resolve.hpp"
#include "plan/planner.hpp"
#include "report/compare_report.hpp"
#include "report/plan_json.hpp"
#include "report/sheet/sheet.hpp"

namespace bulbwright::cli {
namespace {

struct PlanOptions {
  CommonOptions common;
  PotOptions pot;
  std::vector<std::string> files;
  std::string effort = "quick";
  std::vector<std::string> compare;
  std::optional<std::string> save, out_dir;
  bool force = false;
};

OutputFile saved_pot(const input::LocatedRequest& asked, const std::string& file,
                     bool may_replace) {
  return {file, input::write_pot_file(input::moved_to(file, asked.request, asked)), may_replace};
}

/// What a run of this command works with.
struct Bench {
  const PlanOptions& options;
  input::InputFiles& inputs;
  input::Facts facts;
  PackingCache packings{};
  std::string remarks{};

  /// The plan of one pot, and what was asked.
  std::pair<input::LocatedRequest, std::shared_ptr<const Plan>> plan(
      const std::optional<std::string>& file, const PotOptions& pot) {
    input::Faults faults;
    input::LocatedRequest asked = pot_request(file, pot, inputs, Need::all, faults);
    const PlaceSeason place = input::resolve(asked, facts, inputs, std::move(faults));
    for (const std::string& remark : asked.remarks) remarks += "bulbwright: " + remark + "\n";
    auto plan = std::make_shared<const Plan>(input::with_faults_located(asked, [&] {
      return make_plan(asked.request,
                       input::context_of(facts, place, effort_named(options.effort), packings));
    }));
    return {std::move(asked), std::move(plan)};
  }
};

std::string name_of(const Plan& plan, const std::optional<std::string>& file) {
  if (!plan.pot.name.empty()) return plan.pot.name;
  return file ? std::filesystem::path{*file}.stem().string() : "as asked";
}

/// Variants of one pot beside what is asked, where that is a whole pot; or several files.
std::vector<report::ComparedPlan> compared_plans(Bench& bench,
                                                 const std::vector<std::string>& files) {
  std::vector<report::ComparedPlan> plans;
  if (bench.options.compare.empty()) {
    for (const std::string& file : files) {
      auto plan = bench.plan(file, bench.options.pot).second;
      std::string name = name_of(*plan, file);
      plans.push_back({std::move(name), std::move(plan)});
    }
    return plans;
  }
  const auto file = files.empty() ? std::optional<std::string>{} : files.front();
  std::vector<Variant> variants = variants_of(bench.options.compare, bench.options.pot);
  try {
    plans.push_back({"as asked", bench.plan(file, bench.options.pot).second});
  } catch (const InputError&) {
    plans.clear();  // only with a variant is it whole; what is wrong in it they will tell
  }
  for (Variant& variant : variants) {
    plans.push_back({std::move(variant.label), bench.plan(file, variant.pot).second});
  }
  return plans;
}

CommandResult compare(Bench& bench, const std::vector<std::string>& files,
                      const std::string& format, const report::TextStyle& style) {
  if (!bench.options.compare.empty() &&
      (files.size() > 1 || (files.size() == 1 && files[0] == "-")))
    throw InvalidValue{"--compare", "goes with one pot file, or with flags alone"};
  const std::vector<report::ComparedPlan> plans = compared_plans(bench, files);
  CommandResult result;
  result.document =
      format == "json" ? report::compare_json(plans) : report::compare_text(plans, style);
  const bool all = std::all_of(plans.begin(), plans.end(),
                               [](const auto& compared) { return compared.plan->ok; });
  if (!all) result.exit_code = exit_cannot;
  return result;
}

/// A sheet a pot, named as its file.
CommandResult plan_into_folder(const PlanOptions& options, const Terminal& terminal,
                               const std::vector<std::string>& files, const std::string& format,
                               const report::TextStyle& style, input::InputFiles& inputs) {
  if (options.out_dir->empty()) throw InvalidValue{"--out-dir", "expected the name of a folder"};
  if (options.common.out != "-")
    throw InvalidValue{"--out-dir", "given beside --out; expected one of the two"};
  if (files.empty()) throw InvalidValue{"--out-dir", "no pot file; give one or more"};
  const input::Facts facts = input::load_facts(options.common.data, inputs);
  std::vector<PotFile> pots = read_pot_files(files, options.pot, facts, inputs);
  PackingCache packings;
  const auto plans =
      plan_many(pots, facts, effort_named(options.effort), packings, *terminal.progress);
  throw_if_any_fault(pots);
  CommandResult result;
  for (std::size_t i = 0; i < pots.size(); ++i) {
    result.remarks += remarks_on(pots[i]);
    const std::string stem = pots[i].file == "-"
                                 ? "standard-input"
                                 : std::filesystem::path{pots[i].file}.stem().string();
    const std::string path =
        (std::filesystem::path{*options.out_dir} / (stem + (format == "json" ? ".json" : ".txt")))
            .string();
    result.files.push_back(
        {path,
         format == "json" ? report::plan_json(*plans[i]) : report::plan_text(*plans[i], style),
         true});
    if (plans[i]->ok) continue;
    result.exit_code = exit_cannot;
    result.remarks += fmt::format("bulbwright: plan: {} cannot be planted as asked; {} says why\n",
                                  path_in_quotes(pots[i].file), path_in_quotes(path));
  }
  return result;
}

CommandResult plan_one(Bench& bench, const std::vector<std::string>& files,
                       const std::string& format, const report::TextStyle& style) {
  const PlanOptions& options = bench.options;
  const auto file = files.empty() ? std::optional<std::string>{} : files.front();
  const auto [asked, plan] = bench.plan(file, options.pot);
  CommandResult result;
  result.document = format == "json" ? report::plan_json(*plan) : report::plan_text(*plan, style);
  if (options.save) result.files.push_back(saved_pot(asked, *options.save, options.force));
  if (!plan->ok) result.exit_code = exit_cannot;
  return result;
}

CommandResult run(const PlanOptions& options, const Terminal& terminal, input::InputFiles& inputs) {
  const std::string format = format_of(options.common);
  const report::TextStyle style = text_style(options.common, terminal);
  if (options.save && (options.save->empty() || *options.save == "-"))
    throw InputError{{"", 0, 0}, "--save: expected the name of a file, such as pot.json"};
  const std::vector<std::string> files =
      options.out_dir || options.files.size() > 1 ? pot_files(options.files) : options.files;
  const bool many = files.size() > 1 || !options.compare.empty();
  if (options.save && (many || options.out_dir))
    throw InputError{{"", 0, 0}, "--save: goes with one pot"};
  CommandResult result;
  if (options.out_dir) {
    result = plan_into_folder(options, terminal, files, format, style, inputs);
  } else {
    Bench bench{options, inputs, input::load_facts(options.common.data, inputs)};
    result = many ? compare(bench, files, format, style) : plan_one(bench, files, format, style);
    result.remarks = bench.remarks;
  }
  result.out = options.common.out;
  if (options.common.quiet) result.remarks.clear();
  return result;
}

}  // namespace

Command plan_command() {
  auto options = std::make_shared<PlanOptions>();
  Command command{"plan", "Plan one pot: counts, depths, cold, dates, shopping", {}, {}, {}};
  OptionGroup{command.options, ""}.repeated(
      "file", options->files, "[FILE...]",
      "pot file ('-': standard input); flags win over it; several are compared");
  declare_pot(command.options, options->pot);
  declare_effort(command.options, options->effort);
  OptionGroup compared{command.options, "What if"};
  compared.repeated("--compare", options->compare, "DAY,... ...",
                    "a table of other days, or \"site=London\", \"layer=muscari\"");
  OptionGroup output{command.options, "Output"};
  output.text("--out-dir", options->out_dir, "DIR", "a sheet for each FILE (or folder) into DIR");
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
