#pragma once

#include <optional>
#include <vector>

#include "packing_certificate.hpp"
#include "packing_random.hpp"
#include "packing_relax.hpp"

namespace bulbwright::packing {

/// Turns a layout that fits, or nearly, into printed positions that certainly fit: whole tenths of
/// a millimetre. The layout is first loosened (all gaps widened alike, as far as they go), rounded,
/// and where rounding broke a distance the discs concerned are moved by a few tenths
/// (minimum-conflicts search). Round sections also offer other turns of the same layout.
class Rounder {
 public:
  Rounder(const Outline& outline, const Discs& discs)
      : outline_{&outline}, discs_{&discs}, certifier_{outline, discs} {}

  /// Empty where `tries` turns and repairs found no whole positions.
  std::optional<std::vector<GridPoint>> round(const Coordinates& x, int tries, Random& random);

  [[nodiscard]] long work() const { return work_; }

 private:
  Coordinates loosened(const Coordinates& x);
  void list_neighbours(const Coordinates& x);
  [[nodiscard]] double shortfall(std::size_t i, GridPoint p) const;
  bool repair(const Coordinates& target, Random& random);

  const Outline* outline_;
  const Discs* discs_;
  Certifier certifier_;
  Relaxer relaxer_;
  std::vector<std::vector<std::size_t>> neighbours_;
  std::vector<GridPoint> grid_;
  long work_ = 0;
};

}  // namespace bulbwright::packing
