#include "packing_search.hpp"

#include <algorithm>
#include <cmath>

#include "packing_seeds.hpp"

namespace bulbwright::packing {

Search::Search(const Outline& outline, const Discs& discs, double fits_below, std::uint64_t seed)
    : outline_{&outline},
      discs_{&discs},
      fits_below_{fits_below},
      random_{seed},
      energy_{outline, discs} {
  for (std::size_t i = 0; i < discs.size(); ++i) {
    margin_ = std::max(margin_, discs.margin[i]);
    spacing_ = std::max(spacing_, 2.0 * discs.reach[i]);
    mixed_ = mixed_ || discs.reach[i] != discs.reach[0];
  }
}

namespace {

/// Energy, in squared spacings, below which a minimum is worth tightening.
constexpr double near_fit = 1e-7;

/// Hopping goes on between layouts squeezed by this share of the spacing: minimisations are shorter
/// and minima fewer there than where the discs just touch. Every better one is then let out.
constexpr double squeezed_by = 0.001;

/// Hopping begins at the best of this many relaxed seeds.
constexpr int seeds_a_start = 16;

}  // namespace

bool Search::settle(Coordinates x) {
  const double nearly = near_fit * spacing_ * spacing_;
  energy_.set_extra(0.0);
  double e = relaxer_.relax(energy_, x, {fits_below_, 0.0, nearly, 1500});
  if (e > fits_below_ && e < nearly) {
    e = tightener_.tighten(energy_, x, fits_below_, 12, other_work_);
  }
  if (e < best_energy_) {
    best_energy_ = e;
    best_ = std::move(x);
  }
  return e <= fits_below_;
}

double Search::squeeze(Coordinates& x, double worth) {
  energy_.set_extra(squeezed_by * spacing_);
  return relaxer_.relax(energy_, x, {0.0, worth, 0.0, 400});
}

bool Search::try_start(Coordinates x) {
  if (settle(x)) return true;
  current_energy_ = squeeze(x, 0.0);
  current_ = std::move(x);
  stale_ = 0;
  return settle(current_);
}

Coordinates Search::fresh_seed() {
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

Point Search::hole(const Coordinates& x, std::size_t skip, int samples) {
  const std::size_t n = discs_->size();
  Point best = outline_->deepest();
  double widest = -1e300;
  for (int k = 0; k < samples; ++k) {
    const Point p = random_point(*outline_, discs_->margin[skip], random_);
    double room = 1e300;
    for (std::size_t i = 0; i < n; ++i) {
      if (i == skip) continue;
      const double dx = x[i] - p.x, dy = x[n + i] - p.y;
      const double d2 = dx * dx + dy * dy;
      if (d2 < room) room = d2;
    }
    if (room > widest) {
      widest = room;
      best = p;
    }
  }
  other_work_ += samples * static_cast<long>(n) / 2;
  return best;
}

void Search::move_to_hole(Coordinates& x) {
  const std::size_t n = discs_->size();
  energy_.share_by_disc(x, share_);
  std::size_t who = random_.below(n);
  if (random_.below(3) != 0) {  // the most squeezed of a few drawn
    for (std::size_t k = 0; k < 1 + n / 6; ++k) {
      const std::size_t other = random_.below(n);
      if (share_[other] > share_[who]) who = other;
    }
  }
  const Point p = hole(x, who, 4 + static_cast<int>(random_.below(12)));
  x[who] = p.x;
  x[n + who] = p.y;
}

void Search::shake_round(Coordinates& x) {
  const std::size_t n = discs_->size();
  const std::size_t middle = random_.below(n);
  const double mx = x[middle], my = x[n + middle];
  const double reach = 2.0 * spacing_, push = 0.25 * spacing_;
  for (std::size_t i = 0; i < n; ++i) {
    const double dx = x[i] - mx, dy = x[n + i] - my;
    if (dx * dx + dy * dy > reach * reach) continue;
    x[i] += random_.between(-push, push);
    x[n + i] += random_.between(-push, push);
  }
}

void Search::swap_sizes(Coordinates& x) {
  const std::size_t n = discs_->size();
  const std::size_t a = random_.below(n);
  for (int k = 0; k < 20; ++k) {
    const std::size_t b = random_.below(n);
    if (discs_->reach[a] == discs_->reach[b]) continue;
    std::swap(x[a], x[b]);
    std::swap(x[n + a], x[n + b]);
    return;
  }
}

Coordinates Search::hop() {
  Coordinates x = current_;
  if (mixed_ && random_.below(3) == 0) {
    swap_sizes(x);
    return x;
  }
  if (random_.below(8) == 0) {
    shake_round(x);
    return x;
  }
  move_to_hole(x);
  if (random_.below(5) == 0) move_to_hole(x);
  return x;
}

bool Search::start_afresh() {
  current_energy_ = 1e300;
  for (int k = 0; k < seeds_a_start; ++k) {
    Coordinates x = fresh_seed();
    const double e = squeeze(x, k == 0 ? 0.0 : current_energy_);
    if (e >= current_energy_) continue;
    current_energy_ = e;
    current_ = std::move(x);
    if (settle(current_)) return true;
  }
  stale_ = 0;
  return false;
}

bool Search::run(long work) {
  const long end = this->work() + work;
  while (this->work() < end) {
    if (discs_->size() < 2 || current_.empty() ||
        stale_ > 10 + static_cast<int>(discs_->size()) / 2) {
      if (start_afresh()) return true;
      continue;
    }
    Coordinates x = hop();
    const double e = squeeze(x, current_energy_);
    if (e < current_energy_ * (1.0 - 1e-6)) {
      current_ = std::move(x);
      current_energy_ = e;
      stale_ = 0;
      if (settle(current_)) return true;
    } else {
      ++stale_;
    }
  }
  return false;
}

}  // namespace bulbwright::packing
