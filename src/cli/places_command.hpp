#pragma once

#include "cli/command.hpp"

namespace bulbwright::cli {

/// `bulbwright places`: lists and searches the places, the nearest to a position, a zone's profile.
Command places_command();

}  // namespace bulbwright::cli
