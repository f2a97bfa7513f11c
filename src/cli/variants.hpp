#pragma once

#include <string>
#include <vector>

#include "cli/pot_options.hpp"

namespace bulbwright::cli {

/// One "what if": the words as written, and the flags with what they change.
struct Variant {
  std::string label;
  PotOptions pot;
};

/// What --compare lists. A variant is a planting day ("2027-01-25"), or one or several flags of a
/// pot without their dashes, with semicolons between: "site=London", "layer=muscari;
/// layer=crocus-large", "spread". Commas stand between variants; one within a value is understood.
/// @throws InvalidValue for an empty variant and an unknown flag, with its near miss.
std::vector<Variant> variants_of(const std::vector<std::string>& written, const PotOptions& base);

}  // namespace bulbwright::cli
