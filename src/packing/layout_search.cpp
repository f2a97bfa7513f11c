#include "packing/layout_search.hpp"

#include <algorithm>
#include <cmath>

#include "packing/seeds.hpp"

namespace bulbwright::packing {

LayoutSearch::LayoutSearch(const Outline& outline, const Discs& discs, double fits_below,
                           std::uint64_t seed)
    : outline_{&outline},
      discs_{&discs},
      allowed_{std::sqrt(fits_below)},
      margin_{greatest(discs.margin)},
      spacing_{2.0 * greatest(discs.reach)},
      random_{seed},
      energy_{outline, discs},
      hops_{outline, discs, energy_, random_} {}

namespace {

/// Hopping goes on between layouts squeezed by this share of the spacing: minimisations are shorter
/// and minima fewer there than where the discs just touch. Every promising one is then let out.
/// Which of several nearly equal layouts it becomes depends on the squeeze: 0.0004 misses n = 58
/// for long, 0.001 n = 73, 80 and 83.
constexpr double squeezed_by = 0.0005;

/// Relaxations begin pressed together by this share of the spacing, for so many iterations: the
/// pressed minima are fewer and smoother, but not always the ones wanted, so that only one in so
/// many is pressed after the first starts.
constexpr double pressed_by = 0.05;
constexpr int pressed_iterations = 20;
constexpr std::size_t pressed_one_in = 5;

/// Hopping begins at the best of so many relaxed seeds, the first starts looking wider, and ends
/// after so many hops, and per disc, that brought nothing better.
constexpr int early_starts = 2, early_seeds = 32, later_seeds = 16;
constexpr double patience = 10.0, patience_per_disc = 0.2;

/// A layout worse by this share of the spacing, on average, is hopped on from.
constexpr double worse_by = 0.0004;

/// A minimum whose energy or whose mean overlap is above the present one's by more than these is
/// not looked at closer: the order of the squeezed minima is nearly that of the layouts let out.
constexpr double energies_worth = 1.3;
constexpr double overlaps_worth = 1.12;

/// Nor is one that has to be let out this many times further than it was squeezed.
constexpr double squeezes_worth = 2.5;

/// The best layout of a chain that falls short of fitting by no more than this share of the spacing
/// is refined, unless one of this much the same was before.
constexpr double refined_from = 3e-5;
constexpr double refined_same = 2e-7;

/// Refining shakes the discs around a place: between these distances from it and by between these
/// pushes, in spacings. It ends after so many tries, and per disc, that brought nothing better.
constexpr double least_around = 1.1, most_around = 2.5;
constexpr double least_push = 0.02, most_push = 0.4;
constexpr double refining_tries = 20.0, refining_tries_per_disc = 1.0;

/// A layout is better when it falls short of fitting by this share of the spacing less.
constexpr double better_by = 1e-7;

/// Two minima whose energies agree to this share are taken for the same.
constexpr double same_energy = 1e-4;

/// Work a first layout may cost to be let out: about twice what 100 discs take.
constexpr long work_of_a_start = 2'000'000;

}  // namespace

const LayoutSearch::Known* LayoutSearch::known(double energy) const {
  for (const Known& k : known_) {
    if (std::fabs(k.energy - energy) < same_energy * energy) return &k;
  }
  return nullptr;
}

bool LayoutSearch::settle(Coordinates x, Layout& found) {
  found.touching = squeezed_by * spacing_ - found.overlap;
  if (const Known* const before = known(found.energy)) {
    found.touching = before->touching;
    found.met_before = true;
    return false;
  }
  bool fits = false;
  if (found.overlap <= squeezes_worth * squeezed_by * spacing_ &&
      found.overlap <= overlaps_worth * present_.overlap) {
    energy_.set_extra(squeezed_by * spacing_);
    const LetOut wanted{allowed_, std::max(work_of_a_start, end_ - work())};
    fits = tightener_.let_out(energy_, x, wanted, found.touching, other_work_);
  }
  known_.push_back({found.energy, found.touching});
  if (fits || best_.empty() || found.touching > best_touching_) {
    best_touching_ = fits ? std::max(0.0, found.touching) : found.touching;
    best_ = std::move(x);
  }
  return fits;
}

void LayoutSearch::press(Coordinates& x) {
  if (starts_ > early_starts && random_.below(pressed_one_in) != 0) return;
  energy_.set_extra(pressed_by * spacing_);
  coarse_.relax(energy_, x, {0.0, 0.0, 0.0, pressed_iterations});
}

double LayoutSearch::squeeze(Coordinates& x, double worth) {
  energy_.set_extra(squeezed_by * spacing_);
  const RelaxLimits limits{0.0, worth, 0.0, 400};
  const double coarse = coarse_.relax(energy_, x, limits);
  return worth > 0.0 && coarse > worth ? coarse : relaxer_.relax(energy_, x, limits);
}

bool LayoutSearch::is_worth(Coordinates& x, Layout& found) {
  const double worth = energies_worth * present_.energy;
  found.energy = squeeze(x, worth);
  if (found.energy > worth) return false;
  found.overlap = energy_.mean_overlap(x);
  return true;
}

bool LayoutSearch::adopt(Coordinates x, double energy) {
  present_ = {energy, energy_.mean_overlap(x), 0.0, false};
  Layout found = present_;
  const bool fits = settle(x, found);
  present_ = found;
  current_ = std::move(x);
  chain_best_ = present_;
  chain_best_at_ = current_;
  return fits;
}

bool LayoutSearch::try_start(Coordinates x) {
  energy_.set_extra(0.0);
  relaxer_.relax(energy_, x, {allowed_ * allowed_, 0.0, 0.0, 400});
  if (energy_.worst_overlap(x) <= allowed_) {
    best_ = std::move(x);
    best_touching_ = 0.0;
    return true;
  }
  press(x);
  const double energy = squeeze(x, 0.0);
  stale_ = 0;
  return adopt(std::move(x), energy);
}

Coordinates LayoutSearch::fresh_seed() {
  const std::size_t n = discs_->size();
  switch (seeds_++ % 5) {
    case 0:
    case 3:
      return to_coordinates(lattice_seed(*outline_, n, spacing_, margin_, random_));
    case 1:
      return to_coordinates(ring_seed(*outline_, n, spacing_, margin_, random_));
    case 2:
      return to_coordinates(symmetric_seed(*outline_, n, margin_, random_));
    default:
      return to_coordinates(seeds_ % 2 == 0 ? hexagonal_ring_seed(*outline_, n, margin_, random_)
                                            : scattered_seed(*outline_, n, margin_, random_));
  }
}

bool LayoutSearch::start_afresh() {
  present_.energy = 1e300;
  const int seeds = ++starts_ <= early_starts ? early_seeds : later_seeds;
  for (int k = 0; k < seeds; ++k) {
    Coordinates x = fresh_seed();
    press(x);
    const double e = squeeze(x, k == 0 ? 0.0 : present_.energy);
    if (e < present_.energy && adopt(std::move(x), e)) return true;
  }
  stale_ = 0;
  return false;
}

bool LayoutSearch::is_spent() const {
  if (discs_->size() < 2 || current_.empty()) return true;
  return stale_ > patience + patience_per_disc * static_cast<double>(discs_->size());
}

bool LayoutSearch::is_better(const Layout& found, const Layout& than) const {
  return found.touching > than.touching + better_by * spacing_;
}

bool LayoutSearch::hop_on_from(const Layout& found) {
  if (is_better(found, chain_best_)) return true;
  return !found.met_before &&
         found.touching > present_.touching - random_.waiting() * worse_by * spacing_;
}

bool LayoutSearch::was_refined(double touching) const {
  return std::any_of(refined_.begin(), refined_.end(), [&](double before) {
    return std::fabs(before - touching) < refined_same * spacing_;
  });
}

bool LayoutSearch::refine() {
  if (chain_best_at_.empty() || chain_best_.touching < -refined_from * spacing_) return false;
  if (was_refined(chain_best_.touching)) return false;
  refined_.push_back(chain_best_.touching);
  current_ = chain_best_at_;
  present_ = chain_best_;
  const double tries =
      refining_tries + refining_tries_per_disc * static_cast<double>(discs_->size());
  for (stale_ = 0; stale_ < tries && work() < end_; ++stale_) {
    Coordinates x = current_;
    const double around = random_.between(least_around, most_around);
    hops_.shake_around(x, around * spacing_, random_.scaled(least_push, most_push) * spacing_);
    Layout found;
    if (!is_worth(x, found)) continue;
    if (settle(x, found)) return true;
    if (found.touching <= present_.touching) continue;
    if (is_better(found, present_)) stale_ = 0;
    current_ = std::move(x);
    present_ = found;
  }
  refined_.push_back(present_.touching);
  return false;
}

bool LayoutSearch::run(long work) {
  end_ = this->work() + work;
  while (this->work() < end_) {
    if (is_spent()) {
      if (refine() || start_afresh()) return true;
      continue;
    }
    Coordinates x = hops_.hop_from(current_);
    press(x);
    ++stale_;
    Layout found;
    if (!is_worth(x, found)) continue;
    if (settle(x, found)) return true;
    if (!hop_on_from(found)) continue;
    current_ = std::move(x);
    present_ = found;
    if (!is_better(found, chain_best_)) continue;
    chain_best_ = found;
    chain_best_at_ = current_;
    stale_ = 0;
  }
  return false;
}

}  // namespace bulbwright::packing
