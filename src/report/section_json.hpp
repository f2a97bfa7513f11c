#pragma once

#include <nlohmann/json.hpp>

#include "pot/section.hpp"

namespace bulbwright::report {

using Json = nlohmann::ordered_json;

/// A section as the output contract writes it: round { shape, diameter_mm }; rectangle { shape,
/// length_mm, width_mm, corner_radius_mm }; oval { shape, length_mm, width_mm };
/// half-round { shape, width_mm, depth_mm }.
Json section_json(const Section& section);

/// A length for a document: millimetres to 0.1.
double document_mm(Millimetres length);

}  // namespace bulbwright::report
