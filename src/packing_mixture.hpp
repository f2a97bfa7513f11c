#pragma once

#include <span>
#include <vector>

#include "bulbwright/packing.hpp"
#include "packing_energy.hpp"
#include "packing_random.hpp"

namespace bulbwright::packing {

/// Splits n bulbs over the kinds by their shares, largest remainders first, ties to the earlier
/// kind: every kind is within one bulb of its exact share, and the sum is n.
std::vector<std::size_t> apportion(std::size_t n, std::span<const PackKind> kinds);

/// The discs of counts[k] bulbs of kind k, kind by kind, and the kind of each disc.
struct KindDiscs {
  Discs discs;
  std::vector<std::size_t> kind;
};
KindDiscs discs_of(std::span<const PackKind> kinds, const std::vector<std::size_t>& counts,
                   double gap, double wall);

/// Puts the kinds on n places: `order[i]` is the place of disc i. Mixed: like kinds far apart, by
/// swaps until none helps. Drift: each kind a band across the longer side.
std::vector<std::size_t> arrange_kinds(const std::vector<Point>& places,
                                       const std::vector<std::size_t>& kind, Arrange arrange,
                                       Random& random);

/// The largest group of bulbs of this kind in which each touches another of the group; touching
/// means closer than 1.2 times the wanted distance.
std::size_t largest_clump(const Coordinates& x, const KindDiscs& bulbs, std::size_t kind);

/// A mixed layer has no larger group of any kind that makes up a third of the bulbs or less. (A
/// commoner kind must form long chains: of two colours on a hexagonal lattice one always connects
/// side to side.)
inline constexpr std::size_t clump_limit = 3;

/// Some kind of at most a third of the bulbs has a group above clump_limit.
bool has_clump(const Coordinates& x, const KindDiscs& bulbs);

}  // namespace bulbwright::packing
