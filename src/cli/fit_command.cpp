#include "cli/fit_command.hpp"

#include <memory>

#include <fmt/core.h>

#include "base/error.hpp"
#include "cli/common_options.hpp"
#include "cli/effort_option.hpp"
#include "input/field_values.hpp"
#include "layers/layering.hpp"
#include "packing/packing.hpp"
#include "packing/pattern.hpp"
#include "pot/outline_size.hpp"
#include "report/fit_report.hpp"

namespace bulbwright::cli {
namespace {

struct FitOptions {
  CommonOptions common;
  std::string top, shape = "round", corner = "0 mm", bulb, gap = "25 mm", wall = "10 mm", count;
  std::string effort = "quick", pattern = "dense";
};

using input::Faults;

Millimetres length(const char* flag, const std::string& text, input::LengthRange range,
                   Faults& faults) {
  return input::read_length({flag, {}}, text, range, faults).value_or(range.least);
}

/// The outline, judged as the rim of a pot is.
Section outline(const FitOptions& options, Faults& faults) {
  const auto shape = input::read_word<Shape>({"--shape", {}}, options.shape, "shape", faults);
  const Millimetres corner = length("--corner", options.corner, input::small_length, faults);
  if (options.top.empty()) {
    faults.add(input::Field{"--top", {}}, "missing; expected the outline, such as \"380 mm\"");
    return {};
  }
  const auto top = input::read_length_pair({"--top", {}}, options.top, input::pot_size, faults);
  if (!shape || !top) return {};
  try {
    const OutlineSize size = outline_size(*shape, *top, "--top");
    check_corner(*shape, size, corner, "--corner");
    return {*shape, size.length, size.width, corner};
  } catch (const InvalidValue& fault) {
    faults.add(input::Field{fault.field(), {}}, fault.expectation());
    return {};
  }
}

/// What bears on the answer, as it was written or taken for granted.
report::AskedFlags flags_of(const FitOptions& options) {
  report::AskedFlags flags{{"top", options.top}, {"shape", options.shape}};
  if (options.shape == "rectangle") flags.emplace_back("corner", options.corner);
  flags.emplace_back("bulb", options.bulb);
  flags.emplace_back("wall", options.wall);
  if (options.count.empty()) {
    flags.emplace_back("gap", options.gap);
  } else {
    flags.emplace_back("count", options.count);
  }
  flags.emplace_back("pattern", options.pattern);
  flags.emplace_back("effort", options.effort);
  return flags;
}

/// A layer that would take for ever: the number tells where the sizes are wrong.
void refuse_too_many(const Section& section, const PackKind& kind, Millimetres gap,
                     Millimetres wall) {
  const std::size_t most = upper_bound(section, {&kind, 1}, gap, wall).most;
  if (most <= most_bulbs_of_a_layer) return;
  throw InvalidValue{"--bulb",
                     fmt::format("up to {} bulbs of {:g} mm would fit; expected at most {} in one "
                                 "outline: larger bulbs, a wider gap or a smaller outline",
                                 most, kind.diameter.value(), most_bulbs_of_a_layer)};
}

/// How many rings and rows hold beside the densest layout, and the one asked for in its place.
void lay_by_eye(const PackKind& kind, Millimetres gap, report::FitReport& fit) {
  fit.dense_count = fit.packing.bulbs.size();
  for (const Pattern pattern : {Pattern::rings, Pattern::rows}) {
    PatternLayout layout = lay_pattern(fit.section, kind, gap, fit.wall, pattern);
    (pattern == Pattern::rings ? fit.in_rings : fit.in_rows) = layout.packing.bulbs.size();
    if (pattern != fit.pattern) continue;
    fit.packing = std::move(layout.packing);
    fit.sets = std::move(layout.sets);
    fit.upright = layout.upright;
  }
}

CommandResult run(const FitOptions& options, const Terminal& terminal) {
  const std::string format = format_of(options.common);
  Faults faults;
  report::FitReport fit;
  fit.section = outline(options, faults);
  if (options.bulb.empty()) {
    faults.add(input::Field{"--bulb", {}},
               "missing; expected the diameter of the bulbs, such as \"40 mm\"");
  } else {
    fit.bulb = length("--bulb", options.bulb, input::pot_size, faults);
  }
  fit.wall = length("--wall", options.wall, input::small_length, faults);
  const Millimetres gap = length("--gap", options.gap, input::small_length, faults);
  PackKind kind{fit.bulb, 1.0, 0};
  if (!options.count.empty()) {
    fit.own_count = true;
    try {
      kind.count = fit.asked =
          static_cast<int>(parse_whole_number(options.count, 1, most_counted_bulbs));
    } catch (const InvalidValue& fault) {
      faults.add(input::Field{"--count", {}}, fault.expectation());
    }
  }
  fit.pattern = from_word<Pattern>(options.pattern).value_or(Pattern::dense);
  if (fit.own_count && fit.pattern != Pattern::dense) {
    faults.add(input::Field{"--pattern", {}},
               "rings and rows are laid with a gap; expected dense with --count");
  }
  faults.throw_if_any();
  if (!fit.own_count) refuse_too_many(fit.section, kind, gap, fit.wall);
  const Effort effort = effort_named(options.effort);
  fit.packing = fit.own_count ? place_count(fit.section, {&kind, 1}, least_gap, fit.wall, effort)
                              : pack_most(fit.section, {&kind, 1}, gap, fit.wall, effort);
  if (!fit.own_count) lay_by_eye(kind, gap, fit);
  fit.request = flags_of(options);
  CommandResult result;
  result.out = options.common.out;
  const report::TextStyle style = text_style(options.common, terminal);
  if (format == "json") {
    result.document = report::fit_json(fit);
  } else if (format == "csv") {
    result.document = report::fit_csv(fit);
  } else {
    result.document = report::fit_text(fit, style);
  }
  if (fit.packing.bulbs.empty()) {
    result.exit_code = exit_cannot;
    result.remarks = "bulbwright: fit: no bulb fits there\n";
  }
  return result;
}

}  // namespace

Command fit_command() {
  auto options = std::make_shared<FitOptions>();
  Command command{"fit", "How many bulbs fit in one outline, and where they stand", {}, {}, {}};
  OptionGroup group{command.options, "Outline and bulbs"};
  group.text("--top", options->top, "LENGTH", "outline: a diameter, or \"LENGTH x WIDTH\"");
  group.text("--shape", options->shape, "SHAPE", "round, oval, rectangle or half-round (round)");
  group.text("--corner", options->corner, "LENGTH", "corner radius of a rectangle");
  group.text("--bulb", options->bulb, "LENGTH", "diameter of the bulbs");
  group.text("--gap", options->gap, "LENGTH", "clear between neighbours (25 mm)");
  group.text("--wall", options->wall, "LENGTH", "clear between bulb and inner wall (10 mm)");
  group.choice("--pattern", options->pattern, {"dense", "rings", "rows"},
               "rings or rows that a hand can lay, or as many as fit (dense)");
  group.text("--count", options->count, "N",
             "own bulbs: the largest gap for so many, up to an even spread");
  declare_effort(command.options, options->effort);
  declare_common(command.options, options->common, {"text", "json", "csv"});
  command.footer =
      "Example:\n  bulbwright fit --top \"380 mm\" --bulb \"40 mm\" --gap \"25 mm\" --wall \"10 "
      "mm\"";
  command.run = [options](const Terminal& terminal, input::InputFiles&) {
    return run(*options, terminal);
  };
  return command;
}

}  // namespace bulbwright::cli
