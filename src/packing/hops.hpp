#pragma once

#include <vector>

#include "packing/energy.hpp"
#include "packing/random.hpp"

namespace bulbwright::packing {

/// The moves from one layout to the start of another, which has to be relaxed. Outline, discs,
/// energy and random numbers have to outlive them.
class Hops {
 public:
  Hops(const Outline& outline, const Discs& discs, Energy& energy, Random& random);

  /// One move drawn: shake all discs, turn the inside against the rim, shake around a disc, move
  /// the most squeezed disc (or another) into a hole; swap two sizes where there are several.
  Coordinates hop_from(Coordinates x);

  /// Shakes the discs up to `around` from one drawn by up to `push` along x and y, mm.
  void shake_around(Coordinates& x, double around, double push);

  /// Deterministic count of work done, beside the energy's own.
  [[nodiscard]] long work() const { return work_; }

 private:
  void shake_all(Coordinates& x);
  void turn_inside(Coordinates& x);
  void move_to_hole(Coordinates& x);
  void swap_sizes(Coordinates& x);
  Point hole(const Coordinates& x, std::size_t skip, int samples);

  const Outline* outline_;
  const Discs* discs_;
  Energy* energy_;
  Random* random_;
  double margin_, spacing_;    ///< of the largest disc
  bool mixed_;                 ///< discs of several sizes
  std::vector<double> share_;  ///< Energy::share_by_disc
  long work_ = 0;
};

}  // namespace bulbwright::packing
