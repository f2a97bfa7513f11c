#pragma once

#include <vector>

#include "packing/bounds.hpp"
#include "packing/certificate.hpp"
#include "packing/choices.hpp"
#include "packing/kind_layout.hpp"
#include "packing/packing.hpp"

namespace bulbwright::packing {

/// Work units an effort may spend on one question. Calibrated by tests/bench/packing_bench.cpp to
/// about 5, 50 and 500 ms on one core of a small server.
long work_of(Effort effort);

/// The answer printed for a certified layout: bulbs sorted by y, then x; clearances measured.
Packing packing_of(const Outline& outline, const KindDiscs& bulbs,
                   const std::vector<GridPoint>& layout, std::span<const PackKind> kinds,
                   double gap, double wall);
/// The same for places that hold in millionths of a millimetre alone, mm.
Packing packing_of(const Outline& outline, const KindDiscs& bulbs, const Coordinates& layout,
                   std::span<const PackKind> kinds, double gap, double wall);

/// Proven most bulbs of these kinds at `gap`: for every size, the bulbs at least as large are
/// points that far apart and that deep; with shares, the largest total whose apportioned counts
/// keep all these limits.
Bound bound_of(const Outline& outline, std::span<const PackKind> kinds, double gap, double wall);

}  // namespace bulbwright::packing
