#pragma once

#include "cli/command.hpp"

namespace bulbwright::cli {

/// `bulbwright cold`: what a winter gives, month by month, in a pot and by the orchard measures.
Command cold_command();

}  // namespace bulbwright::cli
