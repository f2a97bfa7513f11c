#pragma once

#include "cli/command.hpp"

namespace bulbwright::cli {

/// `bulbwright plan`: one pot, from a pot file or from flags.
Command plan_command();

}  // namespace bulbwright::cli
