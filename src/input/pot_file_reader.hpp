#pragma once

#include <string>
#include <string_view>

#include "input/faults.hpp"
#include "input/located_request.hpp"

namespace bulbwright::input {

/// Reads a pot file (docs/pot-file.md): JSON, comments allowed. Faults of form go to `faults`, each
/// with its place and `file` as its name; a value that is refused is absent. What contradicts
/// itself, is missing or unknown is judged by request_check.hpp.
/// @throws InputError for text that is no JSON.
LocatedRequest read_pot_file(std::string_view text, const std::string& file, Faults& faults);

}  // namespace bulbwright::input
