#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/calendar_day.hpp"
#include "base/quantity.hpp"
#include "catalogue/use.hpp"
#include "packing/choices.hpp"

namespace bulbwright {

/// Layers as a file or the flags ask for them.

struct LayerPart {
  std::string taxon;   ///< an id of the catalogue, checked when resolved
  double share = 1.0;  ///< above 0
  /// Fixes the weeks of cold storage of this kind alone, over StorageRequest::weeks; 0 = none.
  std::optional<double> storage_weeks{};

  bool operator==(const LayerPart&) const = default;
};

struct LayerRequest {
  std::vector<LayerPart> parts;     ///< one, or several for a mixture
  std::optional<double> grade_cm;   ///< middle of the circumference asked for ("12", "12/14")
  std::optional<int> count;         ///< own bulbs, 1 to 1000
  std::optional<Millimetres> gap;   ///< absent: the taxon's own
  bool forcing_gap = false;         ///< "gap": "forcing"
  std::optional<Millimetres> wall;  ///< clearance to the inner wall
  Arrange arrange = Arrange::mixed;
  std::string label;
  std::optional<Day> received;
  double cold_already_weeks = 0.0;
  Use use = Use::outdoors;

  bool operator==(const LayerRequest&) const = default;
};

/// given: the layers lie as they are listed; by_flowering: the latest kind lowest.
enum class LayerOrder { given, by_flowering };

}  // namespace bulbwright
