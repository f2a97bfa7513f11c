#pragma once

#include <span>
#include <vector>

#include "packing/kind_layout.hpp"
#include "packing/packing.hpp"

namespace bulbwright::packing {

/// A layout of a mixture: coordinates of all discs, kind by kind, and how many of each kind.
struct KindLayout {
  Coordinates x;
  std::vector<std::size_t> counts;
};

/// How a fill spreads the kinds of at most a third of the bulbs: not at all; no group above
/// largest_clump; or each bulb well away from its own kind, as far as an even spread would be but
/// for a quarter.
enum class Spread { none, groups, singles };

/// The simple fill of a mixture that a careful hand would do, a start for the search: bulb after
/// bulb in the order of the shares, each at the first free place of a 2 mm grid, row by row from
/// one side of the section (`turned`: column by column), until one finds none. `work` is added to.
KindLayout greedy_fill(const Outline& outline, std::span<const PackKind> kinds, double gap,
                       double wall, bool turned, Spread spread, long& work);

}  // namespace bulbwright::packing
