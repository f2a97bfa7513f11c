#include "packing/rounding.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace bulbwright::packing {
namespace {

/// Rounding moves each centre by at most half a unit in x and in y, so two centres by at most
/// sqrt(2) units towards each other.
constexpr double rounding_loss_mm = 1.415 / units_per_mm;

/// Repairs keep a centre within so much of its wanted place, along x and y together, mm.
constexpr double most_repair_mm = 9.0 / units_per_mm;

GridPoint nearest(double x, double y) {
  return {std::lround(units_per_mm * x), std::lround(units_per_mm * y)};
}

}  // namespace

Coordinates Rounder::loosened(const Coordinates& x) {
  Energy energy{*outline_, *discs_};
  energy.set_extra(rounding_loss_mm);
  Coordinates loose = x;
  relaxer_.relax(energy, loose, {1e-12, 0.0, 0.0, 80});
  work_ += energy.work();
  return loose;
}

void Rounder::list_neighbours(const Coordinates& x) {
  const std::size_t n = discs_->size();
  neighbours_.assign(n, {});
  std::vector<std::size_t> order(n);
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::sort(order.begin(), order.end(),
            [&](std::size_t a, std::size_t b) { return x[a] != x[b] ? x[a] < x[b] : a < b; });
  const double widest = *std::max_element(discs_->reach.begin(), discs_->reach.end());
  constexpr double most_move = 2.5 * most_repair_mm;  // of two centres towards each other
  for (std::size_t k = 0; k < n; ++k) {
    const std::size_t i = order[k];
    for (std::size_t l = k + 1; l < n; ++l) {
      const std::size_t j = order[l];
      const double dx = x[i] - x[j], dy = x[n + i] - x[n + j];
      if (-dx > 2.0 * widest + most_move) break;
      const double near = discs_->reach[i] + discs_->reach[j] + most_move;
      if (dx * dx + dy * dy > near * near) continue;
      neighbours_[i].push_back(j);
      neighbours_[j].push_back(i);
    }
  }
}

void Rounder::list_walls(const Coordinates& target) {
  const std::size_t n = discs_->size();
  target_.resize(n);
  wall_.assign(n, {});
  constexpr double most_away = 1.5 * reach_units / units_per_mm;
  for (std::size_t i = 0; i < n; ++i) {
    target_[i] = nearest(target[i], target[n + i]);
    const Point at{target[i], target[n + i]};
    const double deep_enough = discs_->margin[i] + most_away;
    if (outline_->is_deep(at, deep_enough)) continue;
    wall_[i].assign(static_cast<std::size_t>(across * across), not_known);
  }
}

double Rounder::wall_shortfall(std::size_t i, GridPoint p) {
  if (wall_[i].empty()) return 0.0;
  const std::int64_t dx = p.x - target_[i].x + reach_units, dy = p.y - target_[i].y + reach_units;
  float& known = wall_[i][static_cast<std::size_t>(dx * across + dy)];
  if (known == not_known) {
    known = 0.0F;
    if (!certifier_.inside(i, p)) {
      const double missing =
          std::max(0.001, units_per_mm * (discs_->margin[i] - outline_->depth(to_mm(p))));
      known = static_cast<float>(20.0 * missing);
    }
  }
  return static_cast<double>(known);
}

double Rounder::shortfall(std::size_t i, GridPoint p) {
  double sum = 0.0;
  for (const std::size_t j : neighbours_[i]) {
    const std::int64_t need = certifier_.needed(i, j);
    const std::int64_t have = Certifier::square_distance(p, grid_[j]);
    if (have < need) {
      sum += static_cast<double>(need - have) /
             (0.1 * units_per_mm * (discs_->reach[i] + discs_->reach[j]));
    }
  }
  sum += wall_shortfall(i, p);
  return sum;
}

bool Rounder::repair(const Coordinates& target, Random& random) {
  const std::size_t n = discs_->size();
  grid_.resize(n);
  for (std::size_t i = 0; i < n; ++i) grid_[i] = nearest(target[i], target[n + i]);
  std::vector<std::size_t> waiting;
  std::vector<char> is_waiting(n, 1);
  for (std::size_t i = 0; i < n; ++i) waiting.push_back(i);
  long moves = 60 * static_cast<long>(n);
  while (!waiting.empty()) {
    const std::size_t k = random.below(waiting.size());
    const std::size_t i = waiting[k];
    waiting[k] = waiting.back();
    waiting.pop_back();
    is_waiting[i] = 0;
    const double now = shortfall(i, grid_[i]);
    work_ += 15;
    if (now <= 0.0) continue;
    if (--moves < 0 || work_ > most_work_) return false;
    // The best of the 5 x 5 places about the wanted position or the present one; ties by chance.
    const GridPoint centre = random.below(4) == 0 ? nearest(target[i], target[n + i]) : grid_[i];
    GridPoint best = grid_[i];
    double least = 1e300;
    for (std::int64_t dx = -2; dx <= 2; ++dx) {
      for (std::int64_t dy = -2; dy <= 2; ++dy) {
        const GridPoint p{centre.x + dx, centre.y + dy};
        if (p.x == grid_[i].x && p.y == grid_[i].y) continue;
        const Point at = to_mm(p);
        if (std::fabs(at.x - target[i]) + std::fabs(at.y - target[n + i]) > most_repair_mm)
          continue;
        const double cost = shortfall(i, p) + 0.3 * random.unit();
        if (cost < least) {
          least = cost;
          best = p;
        }
      }
    }
    work_ += 400;
    grid_[i] = best;
    const auto wake = [&](std::size_t j) {
      if (is_waiting[j] != 0) return;
      is_waiting[j] = 1;
      waiting.push_back(j);
    };
    wake(i);
    for (const std::size_t j : neighbours_[i]) wake(j);
  }
  return certifier_.holds(grid_);
}

std::optional<std::vector<GridPoint>> Rounder::round(const Coordinates& x, int tries,
                                                     Random& random, long most_work) {
  const std::size_t n = discs_->size();
  const Coordinates loose = loosened(x);
  most_work_ = work_ + most_work;
  for (int attempt = 0; attempt < tries && (attempt == 0 || work_ < most_work_); ++attempt) {
    Coordinates turned = attempt == 0 ? x : loose;  // exact layouts may lie on the grid already
    if (attempt > 1 && outline_->shape() == Shape::round) {
      const Direction d = direction(random.unit());
      for (std::size_t i = 0; i < n; ++i) {
        turned[i] = d.x * loose[i] - d.y * loose[n + i];
        turned[n + i] = d.y * loose[i] + d.x * loose[n + i];
      }
    }
    if (attempt < 2 || outline_->shape() == Shape::round) {  // else the last target again
      list_neighbours(turned);
      list_walls(turned);
    }
    if (repair(turned, random)) return grid_;
  }
  return std::nullopt;
}

}  // namespace bulbwright::packing
