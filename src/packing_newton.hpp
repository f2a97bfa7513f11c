#pragma once

#include <vector>

#include "packing_energy.hpp"

namespace bulbwright::packing {

/// Squeezes a nearly fitting layout to one that fits: Gauss-Newton steps on the overlapping
/// contacts, slightly damped (Levenberg-Marquardt), the normal equations solved by a banded
/// Cholesky factorisation with the discs sorted along the longer side.
/// Source: Nocedal & Wright, "Numerical Optimization", 2nd ed. 2006, section 10.3.
class Tightener {
 public:
  /// Improves x while the energy falls fast; returns the energy reached. Work is added to `work`.
  double tighten(Energy& energy, Coordinates& x, double fits_below, int most_steps, long& work);

 private:
  void assemble(const std::vector<Contact>& contacts, double damping);
  bool solve();
  double& at(std::size_t row, std::size_t column) {
    return band_[row * (width_ + 1) + (column + width_ - row)];
  }
  void order_along(const Coordinates& x, const std::vector<Contact>& contacts);

  std::size_t width_ = 0;             ///< half bandwidth
  std::vector<double> band_, right_;  ///< lower band by rows, right side
  std::vector<std::size_t> rank_;     ///< disc to place in the order
  std::vector<Contact> contacts_;
  Coordinates trial_, gradient_;
};

}  // namespace bulbwright::packing
