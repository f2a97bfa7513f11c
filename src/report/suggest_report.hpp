#pragma once

#include <string>

#include "report/text_style.hpp"
#include "suggest/suggestion.hpp"

namespace bulbwright::report {

/// Suggestions as the JSON document "bulbwright.suggest/1" (docs/schema/suggest.schema.json): each
/// with its layers, reasons and a pot file for `plan`.
std::string suggest_json(const Suggestions& suggestions);

std::string suggest_text(const Suggestions& suggestions, const TextStyle& style);

}  // namespace bulbwright::report
