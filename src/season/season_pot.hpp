#pragma once

#include <memory>
#include <string>

#include "plan/plan.hpp"

namespace bulbwright {

/// One pot of a season. Pots that are alike share one plan.
struct SeasonPot {
  std::string name;   ///< as lists call it: its own, else its file's
  std::string file;   ///< where it was read
  std::string group;  ///< pots that are looked at together, such as "south steps"; may be empty
  std::shared_ptr<const Plan> plan;  ///< none where the file could not be read
  std::string fault;                 ///< then: why not

  [[nodiscard]] bool ok() const { return plan != nullptr && plan->ok; }
};

/// A plan as the answer to another request that differs from its own in what the pot is called:
/// name, group, notes.
Plan with_names_of(const Request& request, Plan plan);

}  // namespace bulbwright
