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

/// Soft-disc energy: the sum of squared overlaps of pairs and walls, mm^2. Zero exactly for a
/// layout that fits. Near pairs are listed by a cell grid once and listed again only when a centre
/// has moved by more than half the list's skin, so an evaluation costs O(n).
class Energy {
 public:
  Energy(const Outline& outline, const Discs& discs);

  /// Energy at x; the gradient is written to `gradient`.
  double operator()(const Coordinates& x, Coordinates& gradient);

  /// The overlap energy each disc takes part in, at x.
  void share_by_disc(const Coordinates& x, std::vector<double>& share);

  /// Wants all distances and depths this much greater from now on; the list is kept.
  void set_extra(double extra) { extra_ = extra; }

  /// Deterministic count of work done: pair and wall tests.
  [[nodiscard]] long work() const { return work_; }

 private:
  void list_pairs(const Coordinates& x);
  [[nodiscard]] bool list_is_stale(const Coordinates& x) const;

  const Outline* outline_;
  const Discs* discs_;
  double extra_ = 0.0;
  double skin_;
  double reach_max_;
  Coordinates listed_at_;
  std::vector<int> start_, partner_;  ///< partners of i: partner_[start_[i] .. start_[i+1])
  std::vector<int> cell_start_, in_cell_, cell_of_;
  long work_ = 0;
  long wall_cost_;
};

}  // namespace bulbwright::packing
