#pragma once

#include "packing/energy.hpp"
#include "packing/outline.hpp"

namespace bulbwright::packing {

/// Overlap that a layout to be rounded may have, mm.
inline constexpr double certified_overlap = 1e-4;

/// Moves a layout that nearly fits to where it fits with overlaps up to `allowed` mm: relaxed a
/// little squeezed, then let out by Newton steps. The arrangement stays the same. False, with x
/// undefined, where it does not fit so.
bool polish(const Outline& outline, const Discs& discs, double allowed, Coordinates& x);

/// The same for a layout that may well not fit: one squeeze, let out where it nearly fits then.
/// `work` is added to.
bool polish_if_near(const Outline& outline, const Discs& discs, double allowed, Coordinates& x,
                    long& work);

}  // namespace bulbwright::packing
