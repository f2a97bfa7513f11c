#pragma once

#include "cli/command.hpp"

namespace bulbwright::cli {

/// `bulbwright suggest`: which stacks of kinds suit a pot, a place and a stretch of the calendar.
Command declare_suggest(CLI::App& root);

}  // namespace bulbwright::cli
