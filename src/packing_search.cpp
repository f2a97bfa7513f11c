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
  }
}

bool Search::descend(Coordinates& x, double worth) {
  found_energy_ = relaxer_.relax(energy_, x, {fits_below_, worth, 500});
  if (found_energy_ < best_energy_) {
    best_energy_ = found_energy_;
    best_ = x;
  }
  return found_energy_ <= fits_below_;
}

bool Search::try_start(Coordinates x) {
  const bool fits = descend(x, 0.0);
  current_ = std::move(x);
  current_energy_ = found_energy_;
  stale_ = 0;
  return fits;
}

Coordinates Search::fresh_seed() {
  const std::size_t n = discs_->size();
  switch (seeds_++ % 3) {
    case 0:
      return to_coordinates(lattice_seed(*outline_, n, spacing_, margin_, random_));
    case 1:
      return to_coordinates(ring_seed(*outline_, n, spacing_, margin_, random_));
    default:
      return to_coordinates(scattered_seed(*outline_, n, margin_, random_));
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

Coordinates Search::hop() {
  const std::size_t n = discs_->size();
  Coordinates x = current_;
  energy_.share_by_disc(x, share_);
  const int moves = random_.below(3) == 0 ? 2 : 1;
  for (int m = 0; m < moves; ++m) {
    std::size_t who = random_.below(n);
    if (random_.below(3) != 0) {  // the most squeezed of a few drawn
      for (int k = 0; k < 1 + static_cast<int>(n) / 3; ++k) {
        const std::size_t other = random_.below(n);
        if (share_[other] > share_[who]) who = other;
      }
    }
    const Point p = hole(x, who, 4 + static_cast<int>(random_.below(40)));
    x[who] = p.x;
    x[n + who] = p.y;
  }
  return x;
}

bool Search::run(long work) {
  const long end = this->work() + work;
  while (this->work() < end) {
    if (discs_->size() < 2 || current_.empty() || stale_ > 10 + static_cast<int>(discs_->size())) {
      if (try_start(fresh_seed())) return true;
      continue;
    }
    Coordinates x = hop();
    const bool fits = descend(x, current_energy_);
    if (found_energy_ < current_energy_ * (1.0 - 1e-6)) {
      current_ = std::move(x);
      current_energy_ = found_energy_;
      stale_ = 0;
    } else {
      ++stale_;
    }
    if (fits) return true;
  }
  return false;
}

}  // namespace bulbwright::packing
