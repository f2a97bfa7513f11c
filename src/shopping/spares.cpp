#include "shopping/spares.hpp"

#include <cmath>

#include "base/quantity.hpp"

namespace bulbwright {

int flat_spares(int count, double rate) {
  // Rounded first: 0.1 * 30 is a little over 3 in binary and must not give 4.
  return static_cast<int>(std::ceil(rounded(rate * count, 1e-6)));
}

}  // namespace bulbwright
