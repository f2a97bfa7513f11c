#pragma once

#include <optional>
#include <string>

#include "base/quantity.hpp"

namespace bulbwright {

/// What the grower says of the refrigerator.
struct StorageRequest {
  std::optional<Celsius> temperature;
  std::optional<std::string> method;
  std::optional<double> weeks;  ///< fixes the weeks of all taxa; 0 = none

  bool operator==(const StorageRequest&) const = default;
};

}  // namespace bulbwright
