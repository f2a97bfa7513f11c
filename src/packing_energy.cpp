#include "packing_energy.hpp"

#include <algorithm>
#include <cmath>

namespace bulbwright::packing {
namespace {

constexpr std::size_t list_all_up_to = 150;  ///< below, testing all pairs beats the cell grid

}  // namespace

Discs equal_discs(std::size_t n, double spacing, double margin) {
  return {std::vector<double>(n, spacing / 2.0), std::vector<double>(n, margin)};
}

Energy::Energy(const Outline& outline, const Discs& discs) : outline_{&outline}, discs_{&discs} {
  reach_max_ = 0.0;
  for (const double r : discs.reach) reach_max_ = std::max(reach_max_, r);
  skin_ = 0.7 * reach_max_;
  per_length_ = reach_max_ > 0.0 ? 0.25 / reach_max_ : 0.0;
  const bool curved = outline.shape() == Shape::oval || outline.shape() == Shape::half_round;
  wall_cost_ = curved ? 28 : 8;  // and the minimiser's own work for a disc
}

bool Energy::list_is_stale(const Coordinates& x) const {
  if (listed_at_.size() != x.size()) return true;
  const std::size_t n = x.size() / 2;
  const double limit = skin_ * skin_ / 4.0;
  for (std::size_t i = 0; i < n; ++i) {
    const double dx = x[i] - listed_at_[i], dy = x[n + i] - listed_at_[n + i];
    if (!(dx * dx + dy * dy <= limit)) return true;
  }
  return false;
}

void Energy::list_all_pairs(const Coordinates& x) {
  const std::size_t n = x.size() / 2;
  partner_.resize(n * (n - 1) / 2 + 1);
  const double* xs = x.data();
  const double* ys = x.data() + n;
  int count = 0;
  for (std::size_t i = 0; i < n; ++i) {
    start_[i] = count;
    const double base = discs_->reach[i] + skin_;
    for (std::size_t j = i + 1; j < n; ++j) {
      const double dx = xs[i] - xs[j], dy = ys[i] - ys[j], near = base + discs_->reach[j];
      partner_[static_cast<std::size_t>(count)] = static_cast<int>(j);
      count += dx * dx + dy * dy < near * near ? 1 : 0;
    }
  }
  start_[n] = count;
  work_ += static_cast<long>(n * n) / 8;
}

void Energy::list_pairs(const Coordinates& x) {
  const std::size_t n = x.size() / 2;
  listed_at_ = x;
  start_.resize(n + 1);
  if (n <= list_all_up_to) {
    list_all_pairs(x);
    return;
  }
  partner_.clear();
  const double cut = 2.0 * reach_max_ + skin_;
  double x0 = x[0], x1 = x[0], y0 = x[n], y1 = x[n];
  for (std::size_t i = 1; i < n; ++i) {
    x0 = std::min(x0, x[i]), x1 = std::max(x1, x[i]);
    y0 = std::min(y0, x[n + i]), y1 = std::max(y1, x[n + i]);
  }
  const int columns = std::clamp(static_cast<int>((x1 - x0) / cut) + 1, 1, 256);
  const int rows = std::clamp(static_cast<int>((y1 - y0) / cut) + 1, 1, 256);
  const auto line = [](double v, double low, double high, int count) {
    const double f = high > low ? (v - low) / (high - low) * count : 0.0;
    return std::clamp(static_cast<int>(f), 0, count - 1);
  };
  // With count = floor(width / cut) + 1 a cell may be narrower than the cut; look two cells away.
  const int cells = columns * rows;
  cell_start_.assign(static_cast<std::size_t>(cells) + 1, 0);
  cell_of_.resize(n);
  for (std::size_t i = 0; i < n; ++i) {
    const int c = line(x[n + i], y0, y1, rows) * columns + line(x[i], x0, x1, columns);
    cell_of_[i] = c;
    ++cell_start_[static_cast<std::size_t>(c) + 1];
  }
  for (std::size_t c = 0; c < static_cast<std::size_t>(cells); ++c)
    cell_start_[c + 1] += cell_start_[c];
  in_cell_.resize(n);
  std::vector<int> next(cell_start_.begin(), cell_start_.end() - 1);
  for (std::size_t i = 0; i < n; ++i) {
    in_cell_[static_cast<std::size_t>(next[static_cast<std::size_t>(cell_of_[i])]++)] =
        static_cast<int>(i);
  }
  const double cell_w = (x1 - x0) / columns, cell_h = (y1 - y0) / rows;
  const int span_x = columns == 1 ? 0 : static_cast<int>(cut / cell_w) + 1;
  const int span_y = rows == 1 ? 0 : static_cast<int>(cut / cell_h) + 1;
  for (std::size_t i = 0; i < n; ++i) {
    start_[i] = static_cast<int>(partner_.size());
    const int row = cell_of_[i] / columns, column = cell_of_[i] % columns;
    for (int r = std::max(0, row - span_y); r <= std::min(rows - 1, row + span_y); ++r) {
      const int c0 = std::max(0, column - span_x), c1 = std::min(columns - 1, column + span_x);
      const int from = cell_start_[static_cast<std::size_t>(r * columns + c0)];
      const int to = cell_start_[static_cast<std::size_t>(r * columns + c1) + 1];
      for (int k = from; k < to; ++k) {
        const std::size_t j = static_cast<std::size_t>(in_cell_[static_cast<std::size_t>(k)]);
        if (j <= i) continue;
        const double dx = x[i] - x[j], dy = x[n + i] - x[n + j];
        const double near = discs_->reach[i] + discs_->reach[j] + skin_;
        if (dx * dx + dy * dy < near * near) partner_.push_back(static_cast<int>(j));
      }
      work_ += to - from;
    }
  }
  start_[n] = static_cast<int>(partner_.size());
}

double Energy::operator()(const Coordinates& x, Coordinates& gradient) {
  const std::size_t n = x.size() / 2;
  if (list_is_stale(x)) list_pairs(x);
  gradient.assign(2 * n, 0.0);
  double energy = 0.0;
  const double* xs = x.data();
  const double* ys = x.data() + n;
  double* gx = gradient.data();
  double* gy = gradient.data() + n;
  const double* reach = discs_->reach.data();
  const double pull_factor = 4.0 * per_length_;
  for (std::size_t i = 0; i < n; ++i) {
    const double xi = xs[i], yi = ys[i], ri = reach[i] + extra_;
    double gxi = 0.0, gyi = 0.0;
    const int end = start_[i + 1];
    for (int k = start_[i]; k < end; ++k) {
      const std::size_t j = static_cast<std::size_t>(partner_[static_cast<std::size_t>(k)]);
      const double dx = xi - xs[j], dy = yi - ys[j], want = ri + reach[j];
      const double d2 = dx * dx + dy * dy;
      const double over = (want * want - d2) * per_length_;
      if (over <= 0.0) continue;
      energy += over * over;
      const double pull = over * pull_factor;
      gxi -= pull * dx;
      gyi -= pull * dy;
      gx[j] += pull * dx;
      gy[j] += pull * dy;
    }
    gx[i] += gxi;
    gy[i] += gyi;
    const double margin = discs_->margin[i] + extra_;
    if (outline_->clearly_deeper({xi, yi}, margin)) continue;
    energy += outline_->push({xi, yi}, margin, gx[i], gy[i]);
  }
  work_ += static_cast<long>(start_[n]) + wall_cost_ * static_cast<long>(n);
  return energy;
}

void Energy::share_by_disc(const Coordinates& x, std::vector<double>& share) {
  const std::size_t n = x.size() / 2;
  if (list_is_stale(x)) list_pairs(x);
  share.assign(n, 0.0);
  for (std::size_t i = 0; i < n; ++i) {
    for (int k = start_[i]; k < start_[i + 1]; ++k) {
      const std::size_t j = static_cast<std::size_t>(partner_[static_cast<std::size_t>(k)]);
      const double dx = x[i] - x[j], dy = x[n + i] - x[n + j];
      const double want = discs_->reach[i] + discs_->reach[j] + extra_;
      const double over = (want * want - dx * dx - dy * dy) * per_length_;
      if (over <= 0.0) continue;
      share[i] += over * over;
      share[j] += over * over;
    }
    double unused_x = 0.0, unused_y = 0.0;
    share[i] += outline_->push({x[i], x[n + i]}, discs_->margin[i] + extra_, unused_x, unused_y);
  }
  work_ += static_cast<long>(start_[n]) + wall_cost_ * static_cast<long>(n);
}

void Energy::contacts(const Coordinates& x, std::vector<Contact>& found) {
  const std::size_t n = x.size() / 2;
  if (list_is_stale(x)) list_pairs(x);
  found.clear();
  for (std::size_t i = 0; i < n; ++i) {
    for (int k = start_[i]; k < start_[i + 1]; ++k) {
      const std::size_t j = static_cast<std::size_t>(partner_[static_cast<std::size_t>(k)]);
      const double dx = x[i] - x[j], dy = x[n + i] - x[n + j];
      const double want = discs_->reach[i] + discs_->reach[j] + extra_;
      const double d2 = dx * dx + dy * dy;
      if (d2 >= want * want || d2 <= 0.0) continue;
      const double d = std::sqrt(d2);
      found.push_back({i, j, dx / d, dy / d, want - d});
    }
    double gx = 0.0, gy = 0.0;
    const double e = outline_->push({x[i], x[n + i]}, discs_->margin[i] + extra_, gx, gy);
    if (e <= 0.0) continue;
    const double over = std::sqrt(e);  // two walls at once act as one towards their corner
    found.push_back({i, Contact::wall, -gx / (2.0 * over), -gy / (2.0 * over), over});
  }
  work_ += static_cast<long>(start_[n]) + wall_cost_ * static_cast<long>(n);
}

}  // namespace bulbwright::packing
