#pragma once

#include <span>

#include "packing/choices.hpp"
#include "packing/outline.hpp"
#include "packing/packing.hpp"

namespace bulbwright::packing {

/// pack_most() for one kind and for several.
Packing most_of_one(const Outline& outline, const PackKind& kind, double gap, double wall,
                    Effort effort);
Packing most_of_mixture(const Outline& outline, std::span<const PackKind> kinds, double gap,
                        double wall, Effort effort, Arrange arrange);

/// How much a layout is loosened when rounding has broken the tight one, mm per pair.
inline constexpr double spare_for_rounding = 0.006;

/// Turns of a layout that are tried in rounding.
constexpr int rounding_tries(Effort effort) {
  return effort == Effort::quick ? 4 : effort == Effort::normal ? 16 : 60;
}

}  // namespace bulbwright::packing
