#pragma once

#include <string>

#include "catalogue/catalogue.hpp"
#include "plan/plan.hpp"
#include "shopping/shopping.hpp"

namespace bulbwright {

/// The needs of a plan; genera from the catalogue that it was made with.
PotNeeds needs_of(const Plan& plan, const Catalogue& catalogue, std::string file);

}  // namespace bulbwright
