#pragma once

#include <vector>

#include "packing_energy.hpp"

namespace bulbwright::packing {

/// When a minimisation may stop, energies in mm^2.
struct RelaxLimits {
  double fits_below = 0.0;  ///< energy that counts as a layout that fits
  double worth = 0.0;       ///< give up when the minimum will clearly be above this; 0: never
  int most_iterations = 400;
};

/// Limited-memory BFGS on the soft-disc energy.
/// Source: Nocedal & Wright, "Numerical Optimization", 2nd ed. 2006, algorithms 7.4 and 7.5, with
/// backtracking (algorithm 3.1).
class Relaxer {
 public:
  /// Moves x to a local minimum of the energy, which is returned.
  double relax(Energy& energy, Coordinates& x, const RelaxLimits& limits);

 private:
  static constexpr int memory = 8;
  void direction(const Coordinates& gradient, Coordinates& out);

  std::vector<Coordinates> step_, change_;  ///< ring buffers
  std::vector<double> rho_;
  int stored_ = 0, newest_ = 0;
  Coordinates gradient_, trial_, trial_gradient_, along_;
};

}  // namespace bulbwright::packing
