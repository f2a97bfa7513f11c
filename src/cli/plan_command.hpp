#pragma once

#include "cli/command.hpp"

namespace bulbwright::cli {

/// `bulbwright plan`: one pot, from a pot file or from flags.
Command declare_plan(CLI::App& root);

}  // namespace bulbwright::cli
