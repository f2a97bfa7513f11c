#include "packing_relax.hpp"

#include <algorithm>
#include <cmath>

namespace bulbwright::packing {
namespace {

double dot(const Coordinates& a, const Coordinates& b) {
  double s0 = 0.0, s1 = 0.0;
  const std::size_t n = a.size();  // always even
  for (std::size_t i = 0; i < n; i += 2) {
    s0 += a[i] * b[i];
    s1 += a[i + 1] * b[i + 1];
  }
  return s0 + s1;
}

}  // namespace

void Relaxer::direction(const Coordinates& gradient, Coordinates& out) {
  const std::size_t n = gradient.size();
  out = gradient;
  double alpha[memory] = {};
  for (int k = 0; k < stored_; ++k) {
    const auto m = static_cast<std::size_t>((newest_ - k + memory) % memory);
    const double a = rho_[m] * dot(step_[m], out);
    alpha[k] = a;
    for (std::size_t i = 0; i < n; ++i) out[i] -= a * change_[m][i];
  }
  double scale = 0.2;  // contacts have curvature 2, about four of them act on a disc
  if (stored_ > 0) {
    const auto m = static_cast<std::size_t>(newest_);
    scale = 1.0 / (rho_[m] * dot(change_[m], change_[m]));
  }
  for (double& v : out) v *= scale;
  for (int k = stored_ - 1; k >= 0; --k) {
    const auto m = static_cast<std::size_t>((newest_ - k + memory) % memory);
    const double b = alpha[k] - rho_[m] * dot(change_[m], out);
    for (std::size_t i = 0; i < n; ++i) out[i] += b * step_[m][i];
  }
  for (double& v : out) v = -v;
}

double Relaxer::relax(Energy& energy, Coordinates& x, const RelaxLimits& limits) {
  step_.resize(memory);
  change_.resize(memory);
  rho_.resize(memory);
  stored_ = 0;
  newest_ = 0;
  double e = energy(x, gradient_);
  double e_before = e;  // eight iterations ago
  for (int iteration = 1; iteration <= limits.most_iterations && e > limits.fits_below;
       ++iteration) {
    direction(gradient_, along_);
    double slope = dot(gradient_, along_);
    if (!(slope < 0.0)) {
      if (stored_ == 0) break;
      stored_ = 0;
      continue;
    }
    double t = 1.0, e_trial = e;
    bool moved = false;
    trial_.resize(x.size());
    for (int halving = 0; halving < 10; ++halving, t *= 0.4) {
      for (std::size_t i = 0; i < x.size(); ++i) trial_[i] = x[i] + t * along_[i];
      e_trial = energy(trial_, trial_gradient_);
      if (e_trial <= e + 1e-4 * t * slope) {
        moved = true;
        break;
      }
    }
    if (!moved) {
      if (stored_ == 0) break;
      stored_ = 0;
      continue;
    }
    const int next = stored_ == 0 ? 0 : (newest_ + 1) % memory;
    Coordinates& s = step_[static_cast<std::size_t>(next)];
    Coordinates& y = change_[static_cast<std::size_t>(next)];
    s.resize(x.size());
    y.resize(x.size());
    for (std::size_t i = 0; i < x.size(); ++i) {
      s[i] = trial_[i] - x[i];
      y[i] = trial_gradient_[i] - gradient_[i];
    }
    const double curvature = dot(s, y);
    x.swap(trial_);
    gradient_.swap(trial_gradient_);
    e = e_trial;
    if (curvature > 1e-12 * dot(y, y)) {
      rho_[static_cast<std::size_t>(next)] = 1.0 / curvature;
      newest_ = next;
      stored_ = std::min(stored_ + 1, memory);
    } else {
      stored_ = 0;
    }
    if (iteration % 8 == 0) {
      if (limits.worth > 0.0 && e > limits.worth && e - 2.0 * (e_before - e) > limits.worth) break;
      if (e_before - e < 1e-3 * e) break;
      e_before = e;
    }
  }
  return e;
}

}  // namespace bulbwright::packing
