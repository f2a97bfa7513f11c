#pragma once

#include "cli/command.hpp"

namespace bulbwright::cli {

Command season_command();

}  // namespace bulbwright::cli
