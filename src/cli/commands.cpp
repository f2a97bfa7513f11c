#include "cli/bulbs_command.hpp"
#include "cli/cold_command.hpp"
#include "cli/command.hpp"
#include "cli/fit_command.hpp"
#include "cli/places_command.hpp"
#include "cli/plan_command.hpp"
#include "cli/shop_command.hpp"
#include "cli/suggest_command.hpp"

namespace bulbwright::cli {

std::vector<Command> declare_commands(CLI::App& root) {
  return {
      declare_plan(root),  declare_suggest(root), declare_fit(root),    declare_shop(root),
      declare_bulbs(root), declare_cold(root),    declare_places(root),
  };
}

}  // namespace bulbwright::cli
