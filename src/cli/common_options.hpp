#pragma once

#include <string>
#include <vector>

#include "cli/command.hpp"
#include "report/text_style.hpp"

namespace bulbwright::cli {

/// Options with one spelling and one meaning in every command that has them.
struct CommonOptions {
  std::string format = "text";
  std::string out = "-";
  std::string units = "mm";
  std::string data;  ///< a folder that adds or overrides places and taxa
  std::string width;
  std::string colour = "auto";
  bool quiet = false;
};

/// Declares --format (one of `formats`, the first the default), --out, --units, --width, --color,
/// --data, --quiet.
void declare_common(std::vector<Option>& all, CommonOptions& options,
                    std::vector<std::string> formats);

/// How text is laid out: --width, --color and --units over the terminal's facts.
/// @throws InputError for a width that is no number from 40 to 400.
report::TextStyle text_style(const CommonOptions& options, const Terminal& terminal);

}  // namespace bulbwright::cli
