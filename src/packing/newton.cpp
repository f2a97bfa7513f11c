#include "packing/newton.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "packing/vector.hpp"

namespace bulbwright::packing {

namespace {

constexpr double damping = 1e-5;   ///< beside contacts of stiffness 1
constexpr double near_gap = 0.02;  ///< of the spacing: gaps up to this may close in a step
constexpr int most_rounds = 6;     ///< corrections of the set of closed contacts

}  // namespace

void Tightener::order_along(const Coordinates& x, const std::vector<Contact>& contacts) {
  const std::size_t n = x.size() / 2;
  const auto [x0, x1] = std::minmax_element(x.begin(), x.begin() + static_cast<std::ptrdiff_t>(n));
  const auto [y0, y1] = std::minmax_element(x.begin() + static_cast<std::ptrdiff_t>(n), x.end());
  const std::size_t offset = *x1 - *x0 >= *y1 - *y0 ? 0 : n;
  std::vector<std::size_t> order(n);
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return x[offset + a] != x[offset + b] ? x[offset + a] < x[offset + b] : a < b;
  });
  rank_.resize(n);
  for (std::size_t k = 0; k < n; ++k) rank_[order[k]] = k;
  std::size_t apart = 0;
  for (const Contact& c : contacts) {
    if (c.j == Contact::wall) continue;
    const std::size_t a = rank_[c.i], b = rank_[c.j];
    apart = std::max(apart, a > b ? a - b : b - a);
  }
  width_ = 2 * (apart + 1);
}

void Tightener::assemble(const std::vector<Contact>& contacts, double stiffness) {
  const std::size_t n = rank_.size();
  band_.assign(2 * n * width_, 0.0);
  right_.assign(2 * n, 0.0);
  last_.resize(n);
  for (std::size_t k = 0; k < n; ++k) {
    row(k, 0)[0] = stiffness;
    row(k, 1)[1] = stiffness;
    last_[k] = k;
  }
  const auto add = [](double* x_row, double* y_row, const Contact& c, double sign) {
    const double xy = sign * c.nx * c.ny;
    x_row[0] += sign * c.nx * c.nx;
    x_row[1] += xy;
    y_row[0] += xy;
    y_row[1] += sign * c.ny * c.ny;
  };
  for (std::size_t k = 0; k < contacts.size(); ++k) {
    if (active_[k] == 0) continue;
    const Contact& c = contacts[k];
    const std::size_t a = rank_[c.i];
    add(row(a, 0), row(a, 1), c, 1.0);
    right_[2 * a] += c.overlap * c.nx;
    right_[2 * a + 1] += c.overlap * c.ny;
    if (c.j == Contact::wall) continue;
    const std::size_t b = rank_[c.j];
    add(row(b, 0), row(b, 1), c, 1.0);
    right_[2 * b] -= c.overlap * c.nx;
    right_[2 * b + 1] -= c.overlap * c.ny;
    const std::size_t first = std::min(a, b), then = std::max(a, b), column = 2 * (then - first);
    add(row(first, 0) + column, row(first, 1) + column, c, -1.0);
    last_[first] = std::max(last_[first], then);
  }
  for (std::size_t k = 1; k < n; ++k) last_[k] = std::max(last_[k], last_[k - 1]);
}

bool Tightener::solve() {
  // Symmetric elimination, the two rows of a disc at a time; nothing fills in past last_.
  const std::size_t n = rank_.size();
  for (std::size_t k = 0; k < n; ++k) {
    double *const x_row = row(k, 0), *const y_row = row(k, 1);
    const std::size_t end = 2 * (last_[k] - k) + 2;
    if (!(x_row[0] > 0.0)) return false;
    const double by_x = 1.0 / x_row[0], m = x_row[1] * by_x;
    for (std::size_t c = 2; c < end; c += 2)
      store(y_row + c, load(y_row + c) - m * load(x_row + c));
    y_row[1] -= m * x_row[1];
    if (!(y_row[1] > 0.0)) return false;
    const double by_y = 1.0 / y_row[1];
    right_[2 * k + 1] -= m * right_[2 * k];
    for (std::size_t column = 2; column < end; column += 2) {
      const Pair on_x = load(x_row + column) * by_x, on_y = load(y_row + column) * by_y;
      if (on_x[0] == 0.0 && on_x[1] == 0.0 && on_y[0] == 0.0 && on_y[1] == 0.0) continue;
      double *const first = row(k + column / 2, 0), *const second = first + width_;
      for (std::size_t c = column; c < end; c += 2) {
        const Pair along_x = load(x_row + c), along_y = load(y_row + c);
        const std::size_t to = c - column;
        store(first + to, load(first + to) - (on_x[0] * along_x + on_y[0] * along_y));
        store(second + to, load(second + to) - (on_x[1] * along_x + on_y[1] * along_y));
      }
      double* const right = &right_[2 * k + column];
      store(right, load(right) - (on_x * right_[2 * k] + on_y * right_[2 * k + 1]));
    }
  }
  for (std::size_t k = n; k-- > 0;) {
    const double *const x_row = row(k, 0), *const y_row = row(k, 1);
    double* const right = &right_[2 * k];
    Pair on_x{0.0, 0.0}, on_y{0.0, 0.0};
    for (std::size_t c = 2; c < 2 * (last_[k] - k) + 2; c += 2) {
      const Pair solved = load(right + c);
      on_x += load(x_row + c) * solved;
      on_y += load(y_row + c) * solved;
    }
    right[1] = (right[1] - (on_y[0] + on_y[1])) / y_row[1];
    right[0] = (right[0] - (on_x[0] + on_x[1]) - x_row[1] * right[1]) / x_row[0];
  }
  return true;
}

double Tightener::opened(const Contact& c) const {
  const std::size_t a = 2 * rank_[c.i];
  double sum = c.nx * right_[a] + c.ny * right_[a + 1];
  if (c.j != Contact::wall) {
    const std::size_t b = 2 * rank_[c.j];
    sum -= c.nx * right_[b] + c.ny * right_[b + 1];
  }
  return sum;
}

bool Tightener::find_step(Energy& energy, const Coordinates& x, long& work) {
  energy.contacts(x, contacts_, near_gap * energy.length());
  order_along(x, contacts_);
  active_.resize(contacts_.size());
  for (std::size_t k = 0; k < contacts_.size(); ++k) active_[k] = contacts_[k].overlap > 0.0;
  bool changed = true;
  for (int round = 0; round < most_rounds && changed; ++round) {
    assemble(contacts_, damping);
    work += static_cast<long>(x.size() * width_ * width_) / 24;
    if (!solve()) return false;
    changed = false;
    for (std::size_t k = 0; k < contacts_.size(); ++k) {
      const char now = contacts_[k].overlap > opened(contacts_[k]) ? 1 : 0;
      changed = changed || now != active_[k];
      active_[k] = now;
    }
  }
  return true;
}

double Tightener::along(Energy& energy, const Coordinates& x, double t, double& slope) {
  const std::size_t n = x.size() / 2;
  trial_.resize(2 * n);
  for (std::size_t i = 0; i < n; ++i) {
    trial_[i] = x[i] + t * right_[2 * rank_[i]];
    trial_[n + i] = x[n + i] + t * right_[2 * rank_[i] + 1];
  }
  const double e = energy(trial_, gradient_);
  slope = 0.0;
  for (std::size_t i = 0; i < n; ++i) {
    slope += gradient_[i] * right_[2 * rank_[i]] + gradient_[n + i] * right_[2 * rank_[i] + 1];
  }
  return e;
}

double Tightener::take_step(Energy& energy, const Coordinates& x, double slope_here) {
  double low = 0.0, low_slope = slope_here, high = 0.0, high_slope = 0.0, t = 1.0, e = 0.0;
  for (int cut = 0; cut < 12; ++cut) {
    double slope = 0.0;
    e = along(energy, x, t, slope);
    if (std::fabs(slope) <= 0.1 * std::fabs(slope_here) || (slope < 0.0 && t >= 1.0)) break;
    (slope > 0.0 ? high : low) = t;
    (slope > 0.0 ? high_slope : low_slope) = slope;
    t = low + (high - low) * std::clamp(low_slope / (low_slope - high_slope), 0.1, 0.9);
  }
  return e;
}

double Tightener::minimise(Energy& energy, Coordinates& x, int most_steps, long& work) {
  double slope = 0.0;
  double e = energy(x, gradient_);
  for (int step = 0; step < most_steps && e > 0.0; ++step) {
    if (!find_step(energy, x, work)) return e;
    along(energy, x, 0.0, slope);
    if (-slope < 2e-8 * e) return e;  // the model promises half the slope
    const double e_trial = take_step(energy, x, slope);
    if (!(e_trial < e)) return e;
    x.swap(trial_);
    e = e_trial;
  }
  return e;
}

void Tightener::follow(Energy& energy, Coordinates& x, double extra, long& work) {
  const std::size_t n = x.size() / 2;
  energy.contacts(x, contacts_);
  for (Contact& c : contacts_) c.overlap -= energy.extra() - extra;
  energy.set_extra(extra);
  order_along(x, contacts_);
  active_.assign(contacts_.size(), 1);
  assemble(contacts_, 10.0 * damping);
  work += static_cast<long>(x.size() * width_ * width_) / 24;
  if (!solve()) return;
  for (std::size_t i = 0; i < n; ++i) {
    x[i] += right_[2 * rank_[i]];
    x[n + i] += right_[2 * rank_[i] + 1];
  }
}

bool Tightener::let_out(Energy& energy, Coordinates& x, const LetOut& wanted, double& touching,
                        long& work) {
  constexpr int minimisations = 12, steps = 12;
  constexpr double by = 8.0;  // closer to where the discs touch each time
  const RelaxLimits closely{0.0, 0.0, 1e300, 150};
  const long end = energy.work() + work + wanted.most_work;
  relaxer_.relax(energy, x, closely);
  double extra = energy.extra(), root = std::sqrt(minimise(energy, x, steps, work));
  double next = extra / by;
  for (int k = 0; k < minimisations && energy.work() + work < end; ++k) {
    follow(energy, x, next, work);
    relaxer_.relax(energy, x, closely);
    const double next_root = std::sqrt(minimise(energy, x, steps, work));
    const bool fits = energy.worst_overlap(x) <= wanted.allowed;
    if (next_root < root) touching = next - next_root * (extra - next) / (root - next_root);
    if (fits) return true;
    if (!(next_root < root) || touching < -0.3 * next - wanted.allowed) return false;
    extra = next;
    root = next_root;
    const double above = std::max(touching, 0.0);
    next = above + std::max(wanted.allowed, (next - above) / by);
    if (!(next < extra)) return false;
  }
  return false;
}

}  // namespace bulbwright::packing
