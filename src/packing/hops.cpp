#include "packing/hops.hpp"

#include <algorithm>

#include "packing/hole.hpp"
#include "packing/seeds.hpp"

namespace bulbwright::packing {
namespace {

/// All discs are shaken by between these, in spacings.
constexpr double least_shake = 0.3, most_shake = 0.5;

}  // namespace

Hops::Hops(const Outline& outline, const Discs& discs, Energy& energy, Random& random)
    : outline_{&outline},
      discs_{&discs},
      energy_{&energy},
      random_{&random},
      margin_{greatest(discs.margin)},
      spacing_{2.0 * greatest(discs.reach)},
      mixed_{std::any_of(discs.reach.begin(), discs.reach.end(),
                         [&](double r) { return r != discs.reach.front(); })} {}

Point Hops::hole(const Coordinates& x, std::size_t skip, int samples) {
  const std::size_t n = discs_->size();
  const Point best = widest_hole(*outline_, discs_->margin[skip], samples, *random_, [&](Point p) {
    double room = 1e300;
    for (std::size_t i = 0; i < n; ++i) {
      if (i == skip) continue;
      const double dx = x[i] - p.x, dy = x[n + i] - p.y;
      room = std::min(room, dx * dx + dy * dy);
    }
    return room;
  });
  work_ += samples * static_cast<long>(n) / 2;
  return best;
}

void Hops::move_to_hole(Coordinates& x) {
  const std::size_t n = discs_->size();
  energy_->share_by_disc(x, share_);
  std::size_t who = random_->below(n);
  if (random_->below(3) != 0) {  // the most squeezed of a few drawn
    for (std::size_t k = 0; k < 1 + n / 6; ++k) {
      const std::size_t other = random_->below(n);
      if (share_[other] > share_[who]) who = other;
    }
  }
  const Point p = hole(x, who, 4 + static_cast<int>(random_->below(12)));
  x[who] = p.x;
  x[n + who] = p.y;
}

void Hops::shake_around(Coordinates& x, double around, double push) {
  const std::size_t n = discs_->size();
  const std::size_t middle = random_->below(n);
  const double mx = x[middle], my = x[n + middle];
  for (std::size_t i = 0; i < n; ++i) {
    const double dx = x[i] - mx, dy = x[n + i] - my;
    if (dx * dx + dy * dy > around * around) continue;
    x[i] += random_->between(-push, push);
    x[n + i] += random_->between(-push, push);
  }
}

void Hops::swap_sizes(Coordinates& x) {
  const std::size_t n = discs_->size();
  const std::size_t a = random_->below(n);
  for (int k = 0; k < 20; ++k) {
    const std::size_t b = random_->below(n);
    if (discs_->reach[a] == discs_->reach[b]) continue;
    std::swap(x[a], x[b]);
    std::swap(x[n + a], x[n + b]);
    return;
  }
}

void Hops::turn_inside(Coordinates& x) {
  const std::size_t n = discs_->size();
  const Point centre = outline_->deepest();
  const double within = (outline_->inradius() - margin_) * random_->between(0.5, 0.95);
  const Direction turn = direction(random_->unit());
  for (std::size_t i = 0; i < n; ++i) {
    const double dx = x[i] - centre.x, dy = x[n + i] - centre.y;
    if (dx * dx + dy * dy >= within * within) continue;
    x[i] = centre.x + dx * turn.x - dy * turn.y;
    x[n + i] = centre.y + dx * turn.y + dy * turn.x;
  }
}

void Hops::shake_all(Coordinates& x) {
  const double push = random_->between(least_shake, most_shake) * spacing_;
  for (double& v : x) v += random_->between(-push, push);
}

Coordinates Hops::hop_from(Coordinates x) {
  if (mixed_ && random_->below(3) == 0) {
    swap_sizes(x);
    return x;
  }
  const std::size_t draw = random_->below(60);
  if (draw < 36) {
    shake_all(x);
  } else if (draw < 51) {
    turn_inside(x);
  } else if (draw < 53) {
    shake_around(x, 2.0 * spacing_, 0.25 * spacing_);
  } else {
    move_to_hole(x);
    if (random_->below(5) == 0) move_to_hole(x);
  }
  return x;
}

}  // namespace bulbwright::packing
