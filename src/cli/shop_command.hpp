#pragma once

#include "cli/command.hpp"

namespace bulbwright::cli {

/// `bulbwright shop FILE...`: what to buy for any number of pots.
Command declare_shop(CLI::App& root);

}  // namespace bulbwright::cli
