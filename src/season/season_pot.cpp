#include "season/season_pot.hpp"

namespace bulbwright {

Plan with_names_of(const Request& request, Plan plan) {
  plan.request = request;
  plan.pot.name = request.pot.name;
  for (ShoppingNeed& need : plan.shopping) need.pot = request.pot.name;
  return plan;
}

}  // namespace bulbwright
