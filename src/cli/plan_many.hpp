#pragma once

#include <memory>
#include <string>
#include <vector>

#include "cli/pot_files.hpp"
#include "cli/progress.hpp"
#include "packing/packing.hpp"
#include "plan/plan.hpp"

namespace bulbwright::cli {

/// The plans of many pots, each made once: pots that ask for the same at the same place share one,
/// but for their names. Several at a time where the machine has several cores; the answers are the
/// same however many there are.
/// A pot whose plan finds a value wrong gets none, and `faults` of its file.
std::vector<std::shared_ptr<const Plan>> plan_many(std::vector<PotFile>& pots,
                                                   const input::Facts& facts, Effort effort,
                                                   PackingCache& packings, Progress& progress);

}  // namespace bulbwright::cli
