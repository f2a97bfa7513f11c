#pragma once

#include <vector>

#include "packing_energy.hpp"
#include "packing_newton.hpp"
#include "packing_random.hpp"
#include "packing_relax.hpp"

namespace bulbwright::packing {

/// Looks for a layout of all discs in the outline by basin hopping on the soft-disc energy: relax,
/// move the most squeezed (or another) disc into a hole, relax again, keep what is better; start
/// afresh from another seed when nothing better comes. Work is counted, never timed.
class Search {
 public:
  Search(const Outline& outline, const Discs& discs, double fits_below, std::uint64_t seed);

  /// Relaxes this layout first; true when it fits.
  bool try_start(Coordinates x);

  /// Hops until a layout fits or the work is spent.
  bool run(long work);

  [[nodiscard]] const Coordinates& layout() const { return best_; }
  [[nodiscard]] double energy() const { return best_energy_; }
  [[nodiscard]] long work() const { return energy_.work() + other_work_; }

 private:
  Coordinates fresh_seed();
  bool start_afresh();
  Coordinates hop();
  void move_to_hole(Coordinates& x);
  void shake_round(Coordinates& x);
  void swap_sizes(Coordinates& x);
  Point hole(const Coordinates& x, std::size_t skip, int samples);
  bool settle(Coordinates x);
  double squeeze(Coordinates& x, double worth);

  const Outline* outline_;
  const Discs* discs_;
  double fits_below_;
  double margin_ = 0.0, spacing_ = 0.0;  ///< of the largest disc
  Random random_;
  Energy energy_;
  Relaxer relaxer_;
  Tightener tightener_;
  Coordinates current_, best_;
  double current_energy_ = 1e300, best_energy_ = 1e300;
  std::vector<double> share_;
  bool mixed_ = false;  ///< discs of several sizes
  int seeds_ = 0;
  int stale_ = 0;
  long other_work_ = 0;
};

}  // namespace bulbwright::packing
