#include "cold/mix_heat.hpp"

#include <algorithm>
#include <cmath>

namespace bulbwright {
namespace {

/// The first h above 0 at which a h + slope h^2 / 2 = area, for a stretch where the left side
/// grows.
double time_of_area(double a, double slope, double area) {
  const double root = std::sqrt(std::max(0.0, a * a + 2.0 * slope * area));
  return 2.0 * area / (a + root);
}

}  // namespace

MixHeat::MixHeat(double tau_hours, double latent_k)
    : tau_{tau_hours}, latent_k_{latent_k}, hour_decay_{std::exp(-1.0 / tau_hours)} {}

void MixHeat::start_at(double t_c) {
  t_c_ = t_c;
  ice_ = t_c < 0.0 ? 1.0 : 0.0;
}

/// Lags for `hours` without regard to ice; returns the integral of the temperature.
double MixHeat::lag(double a, double b, double hours) {
  const double r = (b - a) / hours;
  const double before = t_c_;
  const double decay = hours == 1.0 ? hour_decay_ : std::exp(-hours / tau_);
  t_c_ = b - r * tau_ + (before - a + r * tau_) * decay;
  return (a + b) / 2 * hours - tau_ * (t_c_ - before);
}

/// When the lag comes to 0 degC, from a side that it leaves once; `hours` where it does not.
double MixHeat::hours_to_zero(double a, double slope, double hours) const {
  const auto at = [&](double h) {
    return a + slope * (h - tau_) + (t_c_ - a + slope * tau_) * std::exp(-h / tau_);
  };
  if (at(hours) * t_c_ > 0.0) return hours;
  double before = 0.0, after = hours;
  for (int i = 0; i < 50; ++i) {
    const double middle = (before + after) / 2;
    (at(middle) * t_c_ > 0.0 ? before : after) = middle;
  }
  return after;
}

/// `hours` with air that does not change sign; returns the integral of the temperature.
double MixHeat::stretch(double a, double b, double hours) {
  const double slope = (b - a) / hours;
  double integral = 0.0, done = 0.0;
  while (done < hours - 1e-12) {
    const double air = a + slope * done, left = hours - done;
    if (t_c_ != 0.0) {
      const double step = hours_to_zero(air, slope, left);
      integral += lag(air, air + slope * step, step);
      done += step;
      if (step < left) t_c_ = 0.0;
      continue;
    }
    const double sign = a + b < 0.0 ? -1.0 : 1.0;
    const double room = sign < 0.0 ? 1.0 - ice_ : ice_;  // still to freeze, or to melt
    if (room <= 0.0) {
      integral += lag(air, b, left);
      return integral;
    }
    // Heat given to the mix is the integral of air / tau; latent_k_ of it turns all.
    const double area = room * latent_k_ * tau_;
    const double step = std::min(left, time_of_area(sign * air, sign * slope, area));
    const double taken = (sign * air * step + sign * slope * step * step / 2) / tau_ / latent_k_;
    ice_ = step < left ? (sign < 0.0 ? 1.0 : 0.0) : std::clamp(ice_ - sign * taken, 0.0, 1.0);
    done += step;
  }
  return integral;
}

double MixHeat::hour(double a, double b) {
  const double low = std::min(a, b), high = std::max(a, b);
  const bool stays_warm = t_c_ > 0.0 && low + (t_c_ - low) * hour_decay_ > 0.0;
  const bool stays_cold = t_c_ < 0.0 && high + (t_c_ - high) * hour_decay_ < 0.0;
  if (stays_warm || stays_cold) return lag(a, b, 1.0);
  if (a * b >= 0.0) return stretch(a, b, 1.0);
  const double crossing = a / (a - b);
  const double first = stretch(a, 0.0, crossing);
  return first + stretch(0.0, b, 1.0 - crossing);
}

}  // namespace bulbwright
