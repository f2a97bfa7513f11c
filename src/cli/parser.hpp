#pragma once

#include <string>
#include <variant>
#include <vector>

#include "cli/command.hpp"

namespace bulbwright::cli {

/// What the program says of itself.
struct ProgramWords {
  std::string name, summary, version, footer;
  std::string data;  ///< whose data it carries, told with the version
};

/// What the arguments (without the program's name) amount to: the command to run, its options
/// filled, or the answer to print at once: help, version, or a fault of usage with exit code 2.
std::variant<const Command*, CommandResult> parse(const ProgramWords& program,
                                                  const std::vector<Command>& commands,
                                                  const std::vector<std::string>& arguments);

/// A fault of usage: exit code 2 with the message in `remarks`.
CommandResult usage_fault(const std::string& message);

}  // namespace bulbwright::cli
