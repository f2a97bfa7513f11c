#pragma once

#include "cli/command.hpp"

namespace bulbwright::cli {

/// `bulbwright cold`: what a winter gives, month by month, in a pot and by the orchard measures.
Command declare_cold(CLI::App& root);

}  // namespace bulbwright::cli
