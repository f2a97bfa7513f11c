#pragma once

#include <string>
#include <vector>

#include "cli/command.hpp"
#include "report/text_style.hpp"

namespace bulbwright::cli {

/// Options with one spelling and one meaning in every command that has them.
struct CommonOptions {
  std::string format;                ///< as written; format_of() tells the one that is meant
  std::vector<std::string> formats;  ///< those of the command, the usual one first
  std::string out = "-";
  std::string units = "mm";
  std::string data;  ///< a folder that adds or overrides places and taxa
  std::string width;
  std::string colour = "auto";
  bool quiet = false;
};

/// Declares --format (one of `formats`, the first the usual one), --out, --units, --width, --color,
/// --data, --quiet.
void declare_common(std::vector<Option>& all, CommonOptions& options,
                    std::vector<std::string> formats);

/// The form of the result: --format, else the one of the command that the ending of --out names
/// (.json, .csv), else the command's first.
std::string format_of(const CommonOptions& options);

/// How text is laid out: --width, --color and --units over the terminal's facts.
/// @throws InputError for a width that is no number from 40 to 400.
report::TextStyle text_style(const CommonOptions& options, const Terminal& terminal);

}  // namespace bulbwright::cli
