#pragma once

#include <string>
#include <utility>
#include <vector>

namespace bulbwright::report {

/// The flags that a command without a pot file was asked with: name without dashes, and value.
using AskedFlags = std::vector<std::pair<std::string, std::string>>;

}  // namespace bulbwright::report
