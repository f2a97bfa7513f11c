#pragma once

#include <memory>
#include <span>
#include <string>

#include "plan/plan.hpp"
#include "report/text_style.hpp"

namespace bulbwright::report {

/// One of several plans that are weighed against each other.
struct ComparedPlan {
  std::string label;  ///< what is different: "2027-01-25", "top=15 in", a pot's name
  std::shared_ptr<const Plan> plan;
};

/// One table, a column a plan, as many beside each other as the page takes: planting, bulbs, cold,
/// flowers of each layer, gaps with their chance, work.
std::string compare_text(std::span<const ComparedPlan> plans, const TextStyle& style);

/// The JSON document "bulbwright.compare/1" (docs/schema/compare.schema.json): each plan as `plan`
/// prints it.
std::string compare_json(std::span<const ComparedPlan> plans);

}  // namespace bulbwright::report
