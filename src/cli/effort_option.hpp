#pragma once

#include <string>

#include "packing/packing.hpp"

namespace CLI {
class App;
}

namespace bulbwright::cli {

/// Declares --effort quick|normal|thorough; the value there is the default.
void declare_effort(CLI::App& command, std::string& effort);

/// One of the three names that --effort takes.
Effort effort_named(const std::string& name);

}  // namespace bulbwright::cli
