#pragma once

#include <cstddef>
#include <vector>

#include "packing_outline.hpp"

namespace bulbwright::packing {

/// Discs to place: centres i and j want a distance of reach[i] + reach[j] (half the bulb and half
/// the gap each), centre i wants a depth of margin[i] in the outline. mm.
struct Discs {
  std::vector<double> reach;
  std::vector<double> margin;
  [[nodiscard]] std::size_t size() const { return reach.size(); }
};

/// `n` equal discs, centres `spacing` apart and `margin` deep.
Discs equal_discs(std::size_t n, double spacing, double margin);

/// Coordinates of n centres: x[0..n) then y[0..n).
using Coordinates = std::vector<double>;

/// Two discs, or a disc and a wall, that overlap. Moving centre i along (nx, ny) and j against it
/// opens the contact.
struct Contact {
  static constexpr std::size_t wall = static_cast<std::size_t>(-1);
  std::size_t i = 0;
  std::size_t j = wall;
  double nx = 0.0, ny = 0.0;  ///< unit vector
  double overlap = 0.0;       ///< above 0, mm
};

/// Soft-disc energy, mm^2: the sum of squared overlaps of pairs and walls, a pair's overlap taken
/// as (want^2 - distance^2) / (4 reach_max), which needs no root and equals want - distance to
/// first order for equal discs. Zero exactly for a layout that fits. Near pairs are listed by a
/// cell grid once and listed again only when a centre has moved by more than half the list's skin,
/// so an evaluation costs O(n).
class Energy {
 public:
  Energy(const Outline& outline, const Discs& discs);

  /// Energy at x; the gradient is written to `gradient`.
  double operator()(const Coordinates& x, Coordinates& gradient);

  /// The overlap energy each disc takes part in, at x.
  void share_by_disc(const Coordinates& x, std::vector<double>& share);

  /// All overlaps at x.
  void contacts(const Coordinates& x, std::vector<Contact>& found);

  /// Wants all distances and depths this much greater from now on; the list is kept.
  void set_extra(double extra) { extra_ = extra; }

  /// Deterministic count of work done: pair and wall tests.
  [[nodiscard]] long work() const { return work_; }

 private:
  void list_pairs(const Coordinates& x);
  void list_all_pairs(const Coordinates& x);
  [[nodiscard]] bool list_is_stale(const Coordinates& x) const;

  const Outline* outline_;
  const Discs* discs_;
  double extra_ = 0.0;
  double skin_;
  double reach_max_;
  double per_length_;  ///< 1 / (4 reach_max)
  Coordinates listed_at_;
  std::vector<int> start_, partner_;  ///< partners of i: partner_[start_[i] .. start_[i+1])
  std::vector<int> cell_start_, in_cell_, cell_of_;
  long work_ = 0;
  long wall_cost_;
};

}  // namespace bulbwright::packing
