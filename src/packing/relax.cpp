#include "packing/relax.hpp"

#include <algorithm>
#include <cmath>

#include "packing/vector.hpp"

namespace bulbwright::packing {
namespace {

/// Progress is judged over this many iterations: fewer give up minima that come late.
constexpr int check_every = 16;

}  // namespace

template <class Real>
void Relaxer<Real>::find_direction() {
  const std::size_t n = along_.size();
  std::array<float, memory> alpha{};
  const auto as_float = [](double v) { return static_cast<float>(v); };
  float* const along = along_.data();
  for (std::size_t i = 0; i < n; i += 4) store(along + i, load_four(&gradient_[i]));
  // The k-th newest step and change of gradient; each sum is taken while the vector is at hand.
  const auto index = [&](std::size_t k) { return (newest_ + memory - k) % memory; };
  double sum = stored_ > 0 ? dot(step_[newest_].data(), along, n) : 0.0;
  for (std::size_t k = 0; k < stored_; ++k) {
    const std::size_t m = index(k);
    alpha[k] = as_float(rho_[m] * sum);
    if (k + 1 < stored_) {
      sum = add_scaled_and_dot(along, -alpha[k], change_[m].data(), step_[index(k + 1)].data(), n);
    } else {
      add_scaled(along, -alpha[k], change_[m].data(), n);
    }
  }
  // Contacts have curvature 2 and about four of them act on a disc.
  scale(along, stored_ > 0 ? -as_float(scale_) : -0.2F, n);
  if (stored_ > 0) sum = dot(change_[index(stored_ - 1)].data(), along, n);
  for (std::size_t k = stored_; k-- > 0;) {
    const std::size_t m = index(k);
    const float b = -alpha[k] - as_float(rho_[m] * sum);
    if (k > 0) {
      sum = add_scaled_and_dot(along, b, step_[m].data(), change_[index(k - 1)].data(), n);
    } else {
      add_scaled(along, b, step_[m].data(), n);
    }
  }
}

template <class Real>
void Relaxer<Real>::remember() {
  const std::size_t n = along_.size();
  const std::size_t next = stored_ == 0 ? 0 : (newest_ + 1) % memory;
  for (std::size_t i = 0; i < n; i += 4) {
    store(&step_[next][i], difference(&trial_[i], &at_[i]));
    store(&change_[next][i], difference(&trial_gradient_[i], &gradient_[i]));
  }
  const double curvature = dot(step_[next].data(), change_[next].data(), n);
  const double square = dot(change_[next].data(), change_[next].data(), n);
  if (!(curvature > 1e-12 * square)) {
    stored_ = 0;
    return;
  }
  rho_[next] = 1.0 / curvature;
  scale_ = curvature / square;
  newest_ = next;
  stored_ = std::min(stored_ + 1, memory);
}

template <class Real>
double Relaxer<Real>::relax(Energy& energy, Coordinates& x, const RelaxLimits& limits) {
  const std::size_t half = x.size() / 2;
  at_.assign((2 * half + 2 + 15) / 16 * 16, Real{0});
  at_[2 * half] = at_[2 * half + 1] = static_cast<Real>(Energy::far_away);
  for (std::size_t i = 0; i < half; ++i) {
    at_[2 * i] = static_cast<Real>(x[i]);
    at_[2 * i + 1] = static_cast<Real>(x[half + i]);
  }
  const double e = relax_centres(energy, limits);
  for (std::size_t i = 0; i < half; ++i) {
    x[i] = static_cast<double>(at_[2 * i]);
    x[half + i] = static_cast<double>(at_[2 * i + 1]);
  }
  return e;
}

template <class Real>
double Relaxer<Real>::relax_centres(Energy& energy, const RelaxLimits& limits) {
  const std::size_t n = at_.size();
  stored_ = 0;
  newest_ = 0;
  trial_ = at_;
  gradient_.assign(n, Real{0});
  trial_gradient_.assign(n, Real{0});
  along_.assign(n, 0.0F);
  for (std::size_t m = 0; m < memory; ++m) {
    step_[m].assign(along_.size(), 0.0F);
    change_[m].assign(along_.size(), 0.0F);
  }
  double e = energy.of_centres(at_.data(), gradient_.data());
  double e_before = e;  // at the last check
  for (int iteration = 1; iteration <= limits.most_iterations && e > limits.fits_below;
       ++iteration) {
    find_direction();
    const double slope = dot(gradient_.data(), along_.data(), n);
    double e_trial = e;
    bool moved = false;
    if (slope < 0.0) {
      double t = 1.0;
      for (int cut = 0; cut < 10 && !moved; ++cut, t *= 0.4) {
        add_scaled_to(trial_.data(), at_.data(), static_cast<Real>(t), along_.data(), n);
        e_trial = energy.of_centres(trial_.data(), trial_gradient_.data());
        moved = e_trial <= e + 1e-4 * t * slope;
      }
    }
    if (!moved) {
      if (stored_ == 0) break;
      stored_ = 0;
      continue;
    }
    remember();
    at_.swap(trial_);
    gradient_.swap(trial_gradient_);
    e = e_trial;
    if (iteration % check_every == 0) {
      if (limits.worth > 0.0 && e - 3.5 * (e_before - e) > limits.worth) break;
      if (e > limits.near && e_before - e < 3e-3 * e) break;
      e_before = e;
    }
  }
  return e;
}

template class Relaxer<float>;
template class Relaxer<double>;

}  // namespace bulbwright::packing
