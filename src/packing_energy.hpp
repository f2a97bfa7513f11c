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
/// opens the contact: the overlap as the energy counts it falls by that much to first order.
struct Contact {
  static constexpr std::size_t wall = static_cast<std::size_t>(-1);
  std::size_t i = 0;
  std::size_t j = wall;
  double nx = 0.0, ny = 0.0;  ///< of unit length, nearly
  double overlap = 0.0;       ///< mm; below 0 a gap
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

  /// The same of n centres laid out x0 y0 x1 y1 ... : what the minimiser works on.
  double of_centres(const double* centres, double* gradient);

  /// The overlap energy each disc takes part in, at x.
  void share_by_disc(const Coordinates& x, std::vector<double>& share);

  /// All overlaps at x, and the gaps up to `near` as negative overlaps.
  void contacts(const Coordinates& x, std::vector<Contact>& found, double near = 0.0);

  /// Sum of squared overlaps over the sum of overlaps, mm; nought where nothing overlaps. At a
  /// minimum this is how much smaller the extra has to be until the contacts just touch, to first
  /// order: the root of the least energy falls in a straight line, and the slope of the least
  /// energy is the sum of twice the overlaps.
  double mean_overlap(const Coordinates& x);

  /// The greatest true overlap at x, mm, without the extra; below 0 for a layout with room.
  double worst_overlap(const Coordinates& x);

  /// Wants all distances and depths this much greater from now on; the list is kept.
  void set_extra(double extra) { extra_ = extra; }
  [[nodiscard]] double extra() const { return extra_; }

  /// Twice the greatest reach, mm.
  [[nodiscard]] double length() const { return 2.0 * reach_max_; }

  /// Deterministic count of work done: pair and wall tests.
  [[nodiscard]] long work() const { return work_; }

 private:
  void keep_list(const Coordinates& x);
  void keep_list(const double* centres);
  void list_pairs();
  void list_all_pairs();
  template <bool equal>
  double pairs_energy(const double* centres, double* gradient) const;
  double walls_energy(const double* centres, double* gradient) const;

  const Outline* outline_;
  const Discs* discs_;
  double extra_ = 0.0;
  double skin_;
  double reach_max_;
  double per_length_;      ///< 1 / (4 reach_max)
  bool equal_;             ///< all reaches are the same
  Coordinates listed_at_;  ///< x0 y0 x1 y1 ...
  Coordinates centres_, pulls_;
  std::vector<float> row_;  ///< x, then y, of the centres being listed
  std::vector<Contact> contacts_;
  std::vector<int> start_, partner_;  ///< partners of i: partner_[start_[i] .. start_[i+1])
  std::vector<int> cell_start_, in_cell_, cell_of_;
  long work_ = 0;
  long wall_cost_;
};

}  // namespace bulbwright::packing
