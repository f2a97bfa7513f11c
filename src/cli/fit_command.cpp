#include "cli/fit_command.hpp"

#include <memory>

#include <fmt/core.h>

#include "base/error.hpp"
#include "base/near_miss.hpp"
#include "base/text.hpp"
#include "cli/common_options.hpp"
#include "cli/effort_option.hpp"
#include "layers/layering.hpp"
#include "packing/packing.hpp"
#include "report/fit_report.hpp"

namespace bulbwright::cli {
namespace {

struct FitOptions {
  CommonOptions common;
  std::string top, shape = "round", corner = "0 mm", bulb, gap = "25 mm", wall = "10 mm", count;
  std::string effort = "normal";
};

Millimetres length(const char* option, const std::string& text, Millimetres least) {
  try {
    const Millimetres value = parse_length(text);
    if (value < least || value > largest_pot_size) {
      throw InvalidValue{"", fmt::format("{} is out of range; expected {:g} mm to 5 m",
                                         bulbwright::in_quotes(text), least.value())};
    }
    return value;
  } catch (const InvalidValue& fault) {
    throw InvalidValue{option, fault.expectation()};
  }
}

Section outline(const FitOptions& options) {
  if (options.top.empty())
    throw InvalidValue{"fit", "--top is missing: the outline, for instance --top \"380 mm\""};
  LengthPair top;
  try {
    top = parse_length_pair(options.top);
  } catch (const InvalidValue& fault) {
    throw InvalidValue{"--top", fault.expectation()};
  }
  if (top.first < Millimetres{1.0} || top.second < Millimetres{1.0} ||
      top.first > largest_pot_size || top.second > largest_pot_size) {
    throw InvalidValue{"--top", fmt::format("{} is out of range; expected 1 mm to 5 m",
                                            bulbwright::in_quotes(options.top))};
  }
  const std::optional<Shape> shape = from_word<Shape>(options.shape);
  if (!shape) {
    throw InvalidValue{"--shape", fmt::format("{} is no shape{}; expected {}",
                                              bulbwright::in_quotes(options.shape),
                                              did_you_mean(options.shape, words_of<Shape>()),
                                              listed(words_of<Shape>(), "or"))};
  }
  if (shape == Shape::round && top.paired && top.first != top.second) {
    throw InvalidValue{
        "--top", "a round outline has one diameter; for two sizes give --shape oval or rectangle"};
  }
  if (shape == Shape::half_round && !top.paired) top.second = top.first / 2.0;
  const Millimetres corner = length("--corner", options.corner, Millimetres{0.0});
  if (corner > Millimetres{0.0} &&
      (shape != Shape::rectangle || corner > std::min(top.first, top.second) / 2.0)) {
    throw InvalidValue{"--corner", "only for a rectangle, and at most half its shorter side"};
  }
  return {*shape, top.first, top.second, corner};
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

CommandResult run(const FitOptions& options, const Terminal& terminal) {
  report::FitReport fit;
  fit.section = outline(options);
  if (options.bulb.empty())
    throw InvalidValue{"fit",
                       "--bulb is missing: the bulbs' diameter, for instance --bulb \"40 mm\""};
  fit.bulb = length("--bulb", options.bulb, Millimetres{1.0});
  fit.wall = length("--wall", options.wall, Millimetres{0.0});
  const Millimetres gap = length("--gap", options.gap, Millimetres{0.0});
  const Effort effort = effort_named(options.effort);
  PackKind kind{fit.bulb, 1.0, 0};
  if (options.count.empty()) {
    refuse_too_many(fit.section, kind, gap, fit.wall);
    fit.packing = pack_most(fit.section, {&kind, 1}, gap, fit.wall, effort);
  } else {
    fit.own_count = true;
    try {
      kind.count = fit.asked =
          static_cast<int>(parse_whole_number(options.count, 1, most_own_bulbs));
    } catch (const InvalidValue& fault) {
      throw InvalidValue{"--count", fault.expectation()};
    }
    fit.packing = place_count(fit.section, {&kind, 1}, least_gap, fit.wall, effort);
  }
  CommandResult result;
  result.out = options.common.out;
  const report::TextStyle style = text_style(options.common, terminal);
  if (options.common.format == "json") {
    result.document = report::fit_json(fit);
  } else if (options.common.format == "csv") {
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
  group.text("--count", options->count, "N", "own bulbs: the largest gap for so many");
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
