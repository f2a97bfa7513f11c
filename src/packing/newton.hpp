#pragma once

#include <vector>

#include "packing/energy.hpp"
#include "packing/relax.hpp"

namespace bulbwright::packing {

/// What a layout is let out for.
struct LetOut {
  double allowed = 0.0;  ///< overlap, mm, that counts as none
  long most_work = 0;
};

/// Newton steps to a minimum of the soft-disc energy. The energy is a sum of squares of the
/// overlapping contacts alone, so each step is solved for the contacts that overlap after it
/// (Gauss-Newton with the set of closed contacts corrected a few times) and ends where the energy
/// is least along it. The equations are solved by elimination in a band, with the discs sorted
/// along the longer side. Source: Nocedal & Wright, "Numerical Optimization", 2nd ed. 2006,
/// sections 10.3 and 16.5.
class Tightener {
 public:
  /// Lets a layout out that is relaxed with the energy's present extra: the extra is made smaller
  /// step by step, the minimum followed by Newton steps. The root of the least energy falls in a
  /// straight line with the extra and is nought where the contacts just touch, so two steps tell
  /// that point, which is written to `touching` (mm). True, and x a layout without any overlap
  /// above what is allowed, when it fits. While the extra is above that point every contact stays
  /// squeezed: the equations are well posed where discs touch in more places than they need to.
  /// Work is added to `work`.
  bool let_out(Energy& energy, Coordinates& x, const LetOut& wanted, double& touching, long& work);

 private:
  /// Moves x, near a minimum of the energy, to it; returns the energy.
  double minimise(Energy& energy, Coordinates& x, int most_steps, long& work);

  /// One step to where the present contacts are squeezed by another extra.
  void follow(Energy& energy, Coordinates& x, double extra, long& work);

  /// Solves for a step from x; it is in right_ by rank. False where it cannot be solved.
  bool find_step(Energy& energy, const Coordinates& x, long& work);

  /// Goes along the step to the least energy, which is returned; the place is in trial_.
  double take_step(Energy& energy, const Coordinates& x, double slope_here);

  /// Energy and slope at the share t of the step; the place is in trial_.
  double along(Energy& energy, const Coordinates& x, double t, double& slope);

  /// How much the step opens a contact, mm.
  [[nodiscard]] double opened(const Contact& c) const;

  void assemble(const std::vector<Contact>& contacts, double stiffness);
  bool solve();

  /// Row `side` (0: x, 1: y) of the disc of this rank in the upper band, from the disc's own
  /// columns on.
  double* row(std::size_t rank, std::size_t side) { return &band_[(2 * rank + side) * width_]; }
  void order_along(const Coordinates& x, const std::vector<Contact>& contacts);

  Relaxer<double> relaxer_;
  std::size_t width_ = 0;             ///< columns kept of a row
  std::vector<double> band_, right_;  ///< upper band by rows, right side
  std::vector<std::size_t> last_;     ///< by rank: the last disc its rows reach
  std::vector<std::size_t> rank_;     ///< disc to place in the order
  std::vector<Contact> contacts_;
  std::vector<char> active_;  ///< contacts taken as closed
  Coordinates trial_, gradient_;
};

}  // namespace bulbwright::packing
