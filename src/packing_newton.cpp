#include "packing_newton.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace bulbwright::packing {

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

void Tightener::assemble(const std::vector<Contact>& contacts, double damping) {
  const std::size_t rows = 2 * rank_.size();
  band_.assign(rows * (width_ + 1), 0.0);
  right_.assign(rows, 0.0);
  for (std::size_t r = 0; r < rows; ++r) at(r, r) = damping;
  for (const Contact& c : contacts) {
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
      double sum = row[c];
      for (std::size_t k = from; k < c; ++k) sum -= row[k] * other[k];
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
    for (std::size_t k = first; k < r; ++k) right_[r] -= row[k] * right_[k];
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

double Tightener::tighten(Energy& energy, Coordinates& x, double fits_below, int most_steps,
                          long& work) {
  const std::size_t n = x.size() / 2;
  double e = energy(x, gradient_);
  double damping = 1e-5;
  for (int step = 0; step < most_steps && e > fits_below; ++step) {
    energy.contacts(x, contacts_);
    order_along(x, contacts_);
    assemble(contacts_, damping);
    work += static_cast<long>(2 * n * width_ * width_) / 4;
    if (!solve()) return e;
    trial_ = x;
    for (std::size_t i = 0; i < n; ++i) {
      trial_[i] += right_[2 * rank_[i]];
      trial_[n + i] += right_[2 * rank_[i] + 1];
    }
    const double e_trial = energy(trial_, gradient_);
    if (e_trial < e) {
      const bool slow = e_trial > 0.7 * e;
      x = trial_;
      e = e_trial;
      damping = std::max(1e-12, damping * 0.1);
      if (slow) return e;
    } else {
      damping *= 30.0;
      if (damping > 0.1) return e;
    }
  }
  return e;
}

}  // namespace bulbwright::packing
