#pragma once

#include <span>
#include <utility>
#include <vector>

#include "packing/choices.hpp"
#include "packing/energy.hpp"
#include "packing/packing.hpp"
#include "packing/random.hpp"

namespace bulbwright::packing {

/// Splits n bulbs over the kinds by their shares (base/apportion): within one bulb of the exact
/// share, but for kinds that would have none and get one from the others.
std::vector<std::size_t> apportion(std::size_t n, std::span<const PackKind> kinds);

/// The discs of counts[k] bulbs of kind k, kind by kind, and the kind of each disc.
struct KindDiscs {
  Discs discs;
  std::vector<std::size_t> kind;
};
KindDiscs discs_of(std::span<const PackKind> kinds, const std::vector<std::size_t>& counts,
                   double gap, double wall);

/// The same with all gaps wider by `spare`, and half of it at the wall.
KindDiscs spaced_discs(std::span<const PackKind> kinds, const std::vector<std::size_t>& counts,
                       double gap, double wall, double spare);

/// What counts as standing together, in least distances.
inline constexpr double clump_reach = 1.2;

/// Neighbours (within clump_reach of their least distance) of one kind as a share of all
/// neighbours, over the share that giving out the places by chance makes: 1 for chance, nought
/// where no two of one kind are neighbours. How evenly a mixture is mixed.
double like_neighbours(const Coordinates& x, const KindDiscs& bulbs);

/// Where the kinds of a mixture stand: put on places, judged and put right as asked, with its work
/// counted.
class KindOrder {
 public:
  explicit KindOrder(Arrange arrange) : arrange_{arrange} {}

  [[nodiscard]] Arrange arrange() const { return arrange_; }

  /// Puts the kinds on n places: `order[i]` is the place of disc i. Mixed: like kinds far apart, by
  /// swaps until none helps. Drift: each kind a band across the longer side.
  std::vector<std::size_t> arranged(const std::vector<Point>& places,
                                    const std::vector<std::size_t>& kind, Random& random);

  /// Kinds do not stand as asked: in clumps, or out of their bands.
  bool out_of_place(const Coordinates& x, const KindDiscs& bulbs) {
    return arrange_ == Arrange::mixed ? !clump_members(x, bulbs).empty() : !in_bands(x, bulbs);
  }

  /// The bulbs of all groups above largest_clump of kinds of at most a third of the bulbs.
  std::vector<std::size_t> clump_members(const Coordinates& x, const KindDiscs& bulbs);

  /// The layout with a member of such a group and a bulb of another kind changed over, so that
  /// fewer are in groups where one of a few draws does that. The two may then stand too close.
  Coordinates with_swap(Coordinates x, const KindDiscs& bulbs, Random& random);

  /// Changes a bulb with like neighbours over with one of another kind drawn, where that leaves
  /// fewer like neighbours; false, and x as it was, where none of a few draws does. The two may
  /// then stand too close.
  bool swap_like(Coordinates& x, const KindDiscs& bulbs, Random& random);

  /// The work done since this was last asked: pair tests.
  long spent() { return std::exchange(work_, 0L); }

 private:
  void spread_kinds(const std::vector<Point>& places, std::vector<std::size_t>& at, Random& random);
  bool in_bands(const Coordinates& x, const KindDiscs& bulbs);

  Arrange arrange_;
  long work_ = 0;
};

/// The layout with its places given to the kinds in the order of x, where all bulbs are of one size
/// and so may change places; else as it is.
Coordinates banded(Coordinates x, const KindDiscs& bulbs);

}  // namespace bulbwright::packing
