#pragma once

#include "cli/command.hpp"

namespace bulbwright::cli {

/// `bulbwright fit`: how many bulbs fit in one outline, with their places.
Command fit_command();

}  // namespace bulbwright::cli
