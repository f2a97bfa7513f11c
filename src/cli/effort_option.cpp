#include "cli/effort_option.hpp"

#include <CLI/CLI.hpp>

namespace bulbwright::cli {

void declare_effort(CLI::App& command, std::string& effort) {
  command.add_option("--effort", effort, "search for room for more bulbs (" + effort + ")")
      ->option_text("quick|normal|thorough")
      ->check(CLI::IsMember({"quick", "normal", "thorough"}))
      ->group("Output");
}

Effort effort_named(const std::string& name) {
  if (name == "quick") return Effort::quick;
  return name == "normal" ? Effort::normal : Effort::thorough;
}

}  // namespace bulbwright::cli
