#pragma once

#include <string>

#include "bulbwright/planner.hpp"
#include "cli/effort_option.hpp"
#include "input/resolve.hpp"

namespace bulbwright::cli {

/// What a plan is made from; everything given must outlive it.
inline PlanContext plan_context(const input::Facts& facts, const Setting& setting,
                                const std::string& effort, PackingCache& packings) {
  return {&facts.catalogue, &facts.blooms, &setting, effort_named(effort), &packings};
}

}  // namespace bulbwright::cli
