#pragma once

#include <string>

#include <nlohmann/json_fwd.hpp>

#include "plan/plan.hpp"

namespace bulbwright::report {

/// A plan as the JSON document "bulbwright.plan/1" (docs/schema/plan.schema.json): the same object
/// whether the plan can be carried out or not. Two-space indent, final newline. Lengths to 0.1 mm,
/// weeks, litres, kilograms and degrees to 0.1, chances to 0.001; no -0. A date, a weight or a text
/// that is not known is an absent key; least_gap_mm of a single bulb is null.
std::string plan_json(const Plan& plan);

/// { code, text, source, severity, short_text }, metric.
nlohmann::ordered_json caution_object(const Caution& caution);

/// First and last flower, days with something open, gaps with their chance, the longest run.
nlohmann::ordered_json display_object(const Display& display);

/// The document plan_json() as an object, for documents that hold many plans.
nlohmann::ordered_json plan_object(const Plan& plan);

}  // namespace bulbwright::report
