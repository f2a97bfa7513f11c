#pragma once

#include "cli/command.hpp"

namespace bulbwright::cli {

/// `bulbwright bulbs [ID...]`: the catalogue, or all that is known of some taxa.
Command declare_bulbs(CLI::App& root);

}  // namespace bulbwright::cli
