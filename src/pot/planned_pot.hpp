#pragma once

#include <string>
#include <vector>

#include "base/quantity.hpp"
#include "pot/pot_request.hpp"
#include "pot/section.hpp"

namespace bulbwright {

/// The pot as planned with: inner sizes.
struct PlannedPot {
  std::string name;
  Shape shape = Shape::round;
  Section rim;                        ///< inner outline at the rim
  Section base;                       ///< inner outline at the floor
  Millimetres height;                 ///< inner
  Millimetres headspace;              ///< rim to mix surface
  Litres volume;                      ///< to the rim
  std::string material;               ///< resolved, never empty
  std::vector<ProfileLevel> profile;  ///< inner, floor first; two levels for a plain taper
  Millimetres corner;
};

struct Pot;
PlannedPot planned_pot(const Pot& pot);

}  // namespace bulbwright
