#pragma once

#include <string>
#include <vector>

#include "cli/option.hpp"
#include "packing/packing.hpp"

namespace bulbwright::cli {

/// Declares --effort quick|normal|thorough; the value there is the default.
void declare_effort(std::vector<Option>& all, std::string& effort);

/// One of the three names that --effort takes.
Effort effort_named(const std::string& name);

}  // namespace bulbwright::cli
