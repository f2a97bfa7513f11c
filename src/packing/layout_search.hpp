#pragma once

#include <vector>

#include "packing/energy.hpp"
#include "packing/hops.hpp"
#include "packing/newton.hpp"
#include "packing/random.hpp"
#include "packing/relax.hpp"

namespace bulbwright::packing {

/// Looks for a layout of all discs in the outline by basin hopping between slightly squeezed
/// minima of the soft-disc energy: shake all discs, turn the inside against the rim, or move the
/// most squeezed (or another) into a hole, relax again. How far a minimum would have to be let out
/// until its discs just touch is what hops are judged by, and one a little worse is taken too;
/// start afresh when nothing better comes, having refined what nearly fits by small shakes here and
/// there: many layouts have parts that can stand in several nearly equal ways. Work is counted,
/// never timed. Shaking all discs after: Grosso, Jamali, Locatelli, Schoen, "Solving the problem of
/// packing equal and unequal circles in a circular container", J. Global Optimization 47, 2010
/// (from memory).
class LayoutSearch {
 public:
  LayoutSearch(const LayoutSearch&) = delete;  // the hops point into it
  LayoutSearch& operator=(const LayoutSearch&) = delete;

  /// A layout fits when no overlap is above the root of `fits_below` (mm^2).
  LayoutSearch(const Outline& outline, const Discs& discs, double fits_below, std::uint64_t seed);

  /// Relaxes this layout first; true when it fits.
  bool try_start(Coordinates x);

  /// Hops until a layout fits or the work is spent.
  bool run(long work);

  /// The layout that fits, or the one nearest to it; empty before any was relaxed.
  [[nodiscard]] const Coordinates& layout() const { return best_; }

  /// How much wider distances and depths could be in layout(), mm; below 0 where they have to be
  /// smaller.
  [[nodiscard]] double touching() const { return best_touching_; }
  [[nodiscard]] long work() const { return energy_.work() + hops_.work() + other_work_; }

 private:
  /// What is known of a squeezed minimum.
  struct Layout {
    double energy = 1e300;
    double overlap = 1e300;    ///< Energy::mean_overlap
    double touching = -1e300;  ///< extra at which the discs just touch, mm
    bool met_before = false;
  };
  struct Known {
    double energy, touching;
  };

  Coordinates fresh_seed();
  bool start_afresh();
  bool settle(Coordinates x, Layout& found);
  [[nodiscard]] bool is_spent() const;
  [[nodiscard]] bool is_better(const Layout& found, const Layout& than) const;
  bool hop_on_from(const Layout& found);
  [[nodiscard]] bool was_refined(double touching) const;
  bool refine();
  bool adopt(Coordinates x, double energy);
  void press(Coordinates& x);
  double squeeze(Coordinates& x, double worth);

  /// Squeezes x; false where its energy is too high to look closer.
  bool is_worth(Coordinates& x, Layout& found);
  [[nodiscard]] const Known* known(double energy) const;

  const Outline* outline_;
  const Discs* discs_;
  double allowed_;           ///< overlap, mm, that counts as none
  double margin_, spacing_;  ///< of the largest disc
  Random random_;
  Energy energy_;
  Hops hops_;
  Relaxer<float> coarse_;
  Relaxer<double> relaxer_;
  Tightener tightener_;
  Coordinates current_, best_;
  Layout present_;  ///< of current_
  double best_touching_ = -1e300;
  Layout chain_best_;  ///< since the last start
  Coordinates chain_best_at_;
  std::vector<double> refined_;  ///< touching of the layouts refined, before and after
  std::vector<Known> known_;
  int seeds_ = 0, starts_ = 0;
  int stale_ = 0;
  long other_work_ = 0, end_ = 0;
};

}  // namespace bulbwright::packing
