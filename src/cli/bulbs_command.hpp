#pragma once

#include "cli/command.hpp"

namespace bulbwright::cli {

/// `bulbwright bulbs [ID...]`: the catalogue, or all that is known of some taxa.
Command bulbs_command();

}  // namespace bulbwright::cli
