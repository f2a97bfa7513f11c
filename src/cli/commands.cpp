#include "cli/bulbs_command.hpp"
#include "cli/cold_command.hpp"
#include "cli/command.hpp"
#include "cli/fit_command.hpp"
#include "cli/places_command.hpp"
#include "cli/plan_command.hpp"
#include "cli/season_command.hpp"
#include "cli/shop_command.hpp"
#include "cli/suggest_command.hpp"

namespace bulbwright::cli {

std::vector<Command> all_commands() {
  return {
      plan_command(), season_command(), suggest_command(), fit_command(),
      shop_command(), bulbs_command(),  cold_command(),    places_command(),
  };
}

}  // namespace bulbwright::cli
