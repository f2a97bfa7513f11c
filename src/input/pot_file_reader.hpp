#pragma once

#include <string>
#include <string_view>

#include "input/located_request.hpp"

namespace bulbwright::input {

/// What a file must hold. whole: all that a plan needs. partial: flags will add the rest, so a
/// missing pot, place or list of layers is no fault.
enum class Extent { whole, partial };

/// Reads a pot file (docs/pot-file.md): JSON, comments allowed. All faults are gathered and told in
/// the order of their places; `file` is their name in messages. Which taxa and sites exist is not
/// judged here: see check_taxa() and check_season().
/// @throws InputError
LocatedRequest read_pot_file(std::string_view text, const std::string& file,
                             Extent extent = Extent::whole);

}  // namespace bulbwright::input
