#pragma once

#include <string>
#include <vector>

#include "cli/command.hpp"

namespace bulbwright::cli {

/// Parses the arguments (without the program's name), runs the command and returns what to print.
/// Wrong input and wrong usage come back as exit code 2 with the message in `remarks`. Files read
/// are noted in `inputs`: writing the result must leave them alone.
/// @throws OutputError, std::bad_alloc and std::system_error only.
CommandResult run_program(const std::vector<std::string>& arguments, const Terminal& terminal,
                          input::InputFiles& inputs);

}  // namespace bulbwright::cli
