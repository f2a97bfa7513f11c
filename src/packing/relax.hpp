#pragma once

#include <array>
#include <vector>

#include "packing/energy.hpp"

namespace bulbwright::packing {

/// When a minimisation may stop, energies in mm^2.
struct RelaxLimits {
  double fits_below = 0.0;  ///< energy that counts as a layout that fits
  double worth = 0.0;       ///< give up when the minimum will clearly be above this; 0: never
  double near = 0.0;        ///< below, slow progress is no reason to stop: the layout nearly fits
  int most_iterations = 400;
};

/// Limited-memory BFGS on the soft-disc energy.
/// Source: Nocedal & Wright, "Numerical Optimization", 2nd ed. 2006, algorithms 7.4 and 7.5, with
/// backtracking (algorithm 3.1).
/// In single precision (Real float) a minimum takes about half the time and its energy is good to
/// a thousandth or so where overlaps are a thousandth of the spacing; double goes on from there.
template <class Real>
class Relaxer {
 public:
  /// Moves x to a local minimum of the energy, which is returned.
  double relax(Energy& energy, Coordinates& x, const RelaxLimits& limits);

 private:
  static constexpr std::size_t memory = 4;
  void find_direction();
  void remember();
  double relax_centres(Energy& energy, const RelaxLimits& limits);

  /// Ring buffers. A search direction need not be exact: single precision, in half the time.
  std::array<std::vector<float>, memory> step_, change_;
  std::vector<float> along_;
  std::array<double, memory> rho_{};
  std::size_t stored_ = 0, newest_ = 0;
  double scale_ = 0.0;
  std::vector<Real> at_;  ///< centres x0 y0 x1 y1 ... and what Energy wants behind, padded
  std::vector<Real> gradient_, trial_, trial_gradient_;
};

}  // namespace bulbwright::packing
