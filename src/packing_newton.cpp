#include "packing_newton.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "packing_vector.hpp"

namespace bulbwright::packing {

namespace {

constexpr double damping = 1e-5;   ///< beside contacts of stiffness 1
constexpr double near_gap = 0.02;  ///< of the spacing: gaps up to this may close in a step
constexpr int most_rounds = 6;     ///< corrections of the set of closed contacts

/// Sum of a[i] b[i] for any n.
double dot_any(const double* a, const double* b, std::size_t n) {
  const std::size_t even = n / 2 * 2;
  const double sum = dot(a, b, even);
  return even == n ? sum : sum + a[even] * b[even];
}

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
  width_ = 2 * apart + 1;
}

void Tightener::assemble(const std::vector<Contact>& contacts, double stiffness) {
  const std::size_t rows = 2 * rank_.size();
  band_.assign(rows * (width_ + 1), 0.0);
  right_.assign(rows, 0.0);
  for (std::size_t r = 0; r < rows; ++r) at(r, r) = stiffness;
  for (std::size_t k = 0; k < contacts.size(); ++k) {
    if (active_[k] == 0) continue;
    const Contact& c = contacts[k];
    const std::size_t a = 2 * rank_[c.i];
    at(a, a) += c.nx * c.nx;
    at(a + 1, a) += c.nx * c.ny;
    at(a + 1, a + 1) += c.ny * c.ny;
    right_[a] += c.overlap * c.nx;
    right_[a + 1] += c.overlap * c.ny;
    if (c.j == Contact::wall) continue;
    const std::size_t b = 2 * rank_[c.j];
    at(b, b) += c.nx * c.nx;
    at(b + 1, b) += c.nx * c.ny;
    at(b + 1, b + 1) += c.ny * c.ny;
    right_[b] -= c.overlap * c.nx;
    right_[b + 1] -= c.overlap * c.ny;
    const std::size_t high = std::max(a, b), low = std::min(a, b);
    at(high, low) -= c.nx * c.nx;
    at(high, low + 1) -= c.nx * c.ny;
    at(high + 1, low) -= c.nx * c.ny;
    at(high + 1, low + 1) -= c.ny * c.ny;
  }
}

bool Tightener::solve() {
  const std::size_t rows = right_.size(), stride = width_ + 1;
  // Row-oriented band Cholesky: entry (r, c) of the factor sits at band_[r * stride + c + width -
  // r].
  for (std::size_t r = 0; r < rows; ++r) {
    const std::size_t first = r > width_ ? r - width_ : 0;
    double* const row = &band_[r * stride + width_ - r];
    for (std::size_t c = first; c <= r; ++c) {
      const double* const other = &band_[c * stride + width_ - c];
      const std::size_t from = std::max(first, c > width_ ? c - width_ : 0);
      const double sum = row[c] - dot_any(row + from, other + from, c - from);
      if (c < r) {
        row[c] = sum / other[c];
      } else {
        if (!(sum > 0.0)) return false;
        row[c] = std::sqrt(sum);
      }
    }
  }
  for (std::size_t r = 0; r < rows; ++r) {
    const std::size_t first = r > width_ ? r - width_ : 0;
    const double* const row = &band_[r * stride + width_ - r];
    right_[r] -= dot_any(row + first, right_.data() + first, r - first);
    right_[r] /= row[r];
  }
  for (std::size_t r = rows; r-- > 0;) {
    const std::size_t first = r > width_ ? r - width_ : 0;
    const double* const row = &band_[r * stride + width_ - r];
    right_[r] /= row[r];
    for (std::size_t k = first; k < r; ++k) right_[k] -= row[k] * right_[r];
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
    work += static_cast<long>(x.size() * width_ * width_) / 8;
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
  work += static_cast<long>(x.size() * width_ * width_) / 8;
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
