#pragma once

#include "cli/command.hpp"

namespace bulbwright::cli {

/// `bulbwright shop FILE...`: what to buy for any number of pots.
Command shop_command();

}  // namespace bulbwright::cli
