#include "cli/command.hpp"

namespace bulbwright::cli {

std::vector<Command> declare_commands(CLI::App& /*root*/) { return {}; }

}  // namespace bulbwright::cli
