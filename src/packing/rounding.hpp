#pragma once

#include <optional>
#include <vector>

#include "packing/certificate.hpp"
#include "packing/random.hpp"
#include "packing/relax.hpp"

namespace bulbwright::packing {

/// Turns a layout that fits, or nearly, into printed positions that certainly fit: whole units
/// of 0.01 mm. The layout is first loosened (all gaps widened alike, as far as they go), rounded,
/// and where rounding broke a distance the discs concerned are moved by a few units
/// (minimum-conflicts search). Round sections also offer other turns of the same layout.
class Rounder {
 public:
  Rounder(const Outline& outline, const Discs& discs)
      : outline_{&outline}, discs_{&discs}, certifier_{outline, discs} {}

  /// Empty where `tries` turns and repairs, or about `most_work`, found no whole positions.
  std::optional<std::vector<GridPoint>> round(const Coordinates& x, int tries, Random& random,
                                              long most_work);

  [[nodiscard]] long work() const { return work_; }

 private:
  Coordinates loosened(const Coordinates& x);
  void list_neighbours(const Coordinates& x);
  void list_walls(const Coordinates& target);
  [[nodiscard]] double wall_shortfall(std::size_t i, GridPoint p);
  [[nodiscard]] double shortfall(std::size_t i, GridPoint p);
  bool repair(const Coordinates& target, Random& random);

  const Outline* outline_;
  const Discs* discs_;
  Certifier certifier_;
  Relaxer<double> relaxer_;
  std::vector<std::vector<std::size_t>> neighbours_;
  std::vector<GridPoint> grid_;

  /// Repairs keep a centre within this many units of its wanted place along x and y.
  static constexpr std::int64_t reach_units = 10;
  static constexpr std::int64_t across = 2 * reach_units + 1;
  static constexpr float not_known = -1.0F;
  std::vector<GridPoint> target_;
  std::vector<std::vector<float>> wall_;  ///< by place about the target; empty far from a wall
  long work_ = 0;
  long most_work_ = 0;
};

}  // namespace bulbwright::packing
