#pragma once

#include <cstddef>
#include <vector>

#include "packing/near_pairs.hpp"
#include "packing/outline.hpp"

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
/// first order for equal discs. Zero exactly for a layout that fits. Only near pairs are looked
/// at, so an evaluation costs O(n).
class Energy {
 public:
  Energy(const Outline& outline, const Discs& discs);

  /// Energy at x; the gradient is written to `gradient`.
  double operator()(const Coordinates& x, Coordinates& gradient);

  /// The same of n centres laid out x0 y0 x1 y1 ... : what the minimiser works on.
  double of_centres(const double* centres, double* gradient);

  /// The same in single precision and about half the time, for the way to a minimum: overlaps are
  /// off by about 10^-7 of the outline's width. One centre more follows the n, at far_away.
  double of_centres(const float* centres, float* gradient);
  static constexpr float far_away = 1e9F;  ///< mm, both coordinates

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

  /// Wants all distances and depths this much greater from now on; the list is kept: it holds the
  /// pairs nearer than their reach for sure, and of those the extra adds all but a few.
  void set_extra(double extra) { extra_ = extra; }
  [[nodiscard]] double extra() const { return extra_; }

  /// Twice the greatest reach, mm.
  [[nodiscard]] double length() const { return 2.0 * reach_max_; }

  /// Deterministic count of work done: pair and wall tests.
  [[nodiscard]] long work() const { return work_ + near_.work(); }

 private:
  void keep_list(const Coordinates& x);
  /// An evaluation and the minimiser's own work for it; walls are pushed in double precision.
  [[nodiscard]] long evaluation_cost(double of_double) const {
    const double discs = static_cast<double>(discs_->size());
    const double free = static_cast<double>(near_.size()) + 8.0 * discs;
    return static_cast<long>(40.0 + of_double * free + wall_cost_ * discs);
  }
  template <bool equal>
  double pairs_energy(const double* centres, double* gradient) const;
  template <bool equal>
  double pairs_energy(const float* centres, float* gradient) const;
  template <class Real>
  double walls_energy(const Real* centres, Real* gradient) const;
  template <class Real>
  double round_wall_energy(const Real* centres, Real room, Real* gradient) const;

  const Outline* outline_;
  const Discs* discs_;
  double extra_ = 0.0;
  double reach_max_;
  double per_length_;  ///< 1 / (4 reach_max)
  bool equal_;         ///< all discs are the same
  NearPairs near_;
  std::vector<float> reach_;     ///< and nought for the far centre
  Coordinates centres_, pulls_;  ///< x0 y0 x1 y1 ...
  std::vector<Contact> contacts_;
  long work_ = 0;
  double wall_cost_;  ///< of a curved wall, a disc
};

}  // namespace bulbwright::packing
