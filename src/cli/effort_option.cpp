#include "cli/effort_option.hpp"

namespace bulbwright::cli {

void declare_effort(std::vector<Option>& all, std::string& effort) {
  OptionGroup{all, "Output"}.choice("--effort", effort, {"quick", "normal", "thorough"},
                                    "search for room for more bulbs (" + effort + ")");
}

Effort effort_named(const std::string& name) {
  if (name == "quick") return Effort::quick;
  return name == "normal" ? Effort::normal : Effort::thorough;
}

}  // namespace bulbwright::cli
