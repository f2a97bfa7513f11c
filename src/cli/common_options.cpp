#include "cli/common_options.hpp"

#include <CLI/CLI.hpp>

#include "base/error.hpp"
#include "base/quantity.hpp"

namespace bulbwright::cli {

void declare_common(CLI::App& command, CommonOptions& options, std::vector<std::string> formats) {
  options.format = formats.front();
  std::string names;
  for (const std::string& format : formats) names += (names.empty() ? "" : "|") + format;
  command.add_option("--format", options.format, "form of the result")
      ->option_text(names)
      ->check(CLI::IsMember(std::move(formats)))
      ->group("Output");
  command.add_option("-o,--out", options.out, "write to FILE ('-': standard output)")
      ->option_text("FILE")
      ->group("Output");
  command.add_option("--units", options.units, "lengths in text")
      ->option_text("mm|in")
      ->check(CLI::IsMember({"mm", "in"}))
      ->group("Output");
  command.add_option("--width", options.width, "columns of text")
      ->option_text("N")
      ->group("Output");
  command.add_option("--color", options.colour, "colour in text")
      ->option_text("auto|always|never")
      ->check(CLI::IsMember({"auto", "always", "never"}))
      ->group("Output");
  command.add_option("--data", options.data, "folder of own taxa.csv, places.csv, bloom.csv")
      ->option_text("DIR")
      ->group("Output");
  command.add_flag("--quiet", options.quiet, "no remarks on standard error")->group("Output");
}

report::TextStyle text_style(const CommonOptions& options, const Terminal& terminal) {
  report::TextStyle style;
  style.utf8 = terminal.utf8;
  style.width = terminal.columns;
  if (!options.width.empty()) {
    try {
      style.width = static_cast<int>(parse_whole_number(options.width, 40, 400));
    } catch (const InvalidValue& fault) {
      throw InputError{{"", 0, 0}, std::string{"--width: "} + fault.what()};
    }
  }
  style.units = options.units == "in" ? report::Units::inches : report::Units::millimetres;
  style.colour = options.colour == "always" || (options.colour == "auto" && terminal.colour);
  return style;
}

}  // namespace bulbwright::cli
