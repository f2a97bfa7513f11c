#pragma once

#include "cli/command.hpp"

namespace bulbwright::cli {

/// `bulbwright fit`: how many bulbs fit in one outline, with their places.
Command declare_fit(CLI::App& root);

}  // namespace bulbwright::cli
