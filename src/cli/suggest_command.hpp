#pragma once

#include "cli/command.hpp"

namespace bulbwright::cli {

/// `bulbwright suggest`: which stacks of kinds suit a pot, a place and a stretch of the calendar.
Command suggest_command();

}  // namespace bulbwright::cli
