#include "cli/common_options.hpp"

#include <algorithm>
#include <filesystem>
#include <utility>

#include "base/error.hpp"
#include "base/quantity.hpp"

namespace bulbwright::cli {
namespace {

std::string lower_ending(const std::string& file) {
  std::string ending = std::filesystem::path{file}.extension().string();
  if (!ending.empty()) ending.erase(0, 1);
  std::transform(ending.begin(), ending.end(), ending.begin(), [](char letter) {
    return letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
  });
  return ending;
}

}  // namespace

std::string format_of(const CommonOptions& options) {
  if (!options.format.empty()) return options.format;
  const std::string ending = lower_ending(options.out);
  const auto& formats = options.formats;
  const bool known = std::find(formats.begin(), formats.end(), ending) != formats.end();
  return known ? ending : formats.front();
}

void declare_common(std::vector<Option>& all, CommonOptions& options,
                    std::vector<std::string> formats) {
  options.formats = formats;
  OptionGroup output{all, "Output"};
  output.choice("--format", options.format, std::move(formats),
                "form of the result (by --out's ending)");
  output.text("-o,--out", options.out, "FILE", "write to FILE ('-': standard output)");
  output.choice("--units", options.units, {"mm", "in"}, "lengths in text");
  output.text("--width", options.width, "N", "columns of text");
  output.choice("--color", options.colour, {"auto", "always", "never"}, "colour in text");
  output.text("--data", options.data, "DIR", "folder of own tables: taxa.csv and others");
  output.flag("--quiet", options.quiet, "no remarks on standard error");
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
