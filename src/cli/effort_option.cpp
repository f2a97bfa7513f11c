#include "cli/effort_option.hpp"

namespace bulbwright::cli {

void declare_effort(std::vector<Option>& all, std::string& effort) {
  OptionGroup{all, "Output"}.choice("--effort", effort, {"quick", "normal", "thorough"},
                                    "search for room for more bulbs (" + effort + ")");
}

Effort effort_named(const std::string& name) {
  return from_word<Effort>(name).value_or(Effort::quick);
}

}  // namespace bulbwright::cli
