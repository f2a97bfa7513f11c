#include "cold/chill.hpp"

#include <array>
#include <cmath>

namespace bulbwright {
namespace {

struct UtahStep {
  double top_c;
  double units;
};
constexpr std::array utah_steps{UtahStep{1.4, 0.0},  UtahStep{2.4, 0.5},  UtahStep{9.1, 1.0},
                                UtahStep{12.4, 0.5}, UtahStep{15.9, 0.0}, UtahStep{18.0, -0.5}};
constexpr double above_utah_steps = -1.0;

constexpr double e0 = 4153.5, e1 = 12888.8, a0 = 139500.0, a1 = 2.567e18;
constexpr double dynamic_slope = 1.6, tf_k = 277.0, kelvin = 273.0;

/// Share of a normal distribution about t_c that lies at or below `top_c`.
double share_below(double top_c, double t_c, double sd_k) {
  return 0.5 * std::erfc((t_c - top_c) / (sd_k * std::sqrt(2.0)));
}

constexpr double chill_top_c = 7.2;

}  // namespace

double mean_chill_hour(double t_c, double sd_k) {
  if (sd_k <= 0.0) return is_chill_hour(t_c) ? 1.0 : 0.0;
  return share_below(chill_top_c, t_c, sd_k) - share_below(0.0, t_c, sd_k);
}

double mean_utah_unit(double t_c, double sd_k) {
  if (sd_k <= 0.0) return utah_unit(t_c);
  double sum = 0.0, below = 0.0;
  for (const UtahStep& step : utah_steps) {
    const double share = share_below(step.top_c, t_c, sd_k);
    sum += step.units * (share - below);
    below = share;
  }
  return sum + above_utah_steps * (1.0 - below);
}

bool is_chill_hour(double t_c) {
  return t_c >= -chill_tie_k && t_c <= chill_top_c + chill_tie_k;
}

double utah_unit(double t_c) {
  for (const UtahStep& step : utah_steps) {
    if (t_c <= step.top_c + chill_tie_k) return step.units;
  }
  return above_utah_steps;
}

double DynamicModel::step(double t_c) {
  const double k = t_c + kelvin;
  const double xs = a0 / a1 * std::exp((e1 - e0) / k);
  const double rate = a1 * std::exp(-e1 / k);
  const double x = xs - (xs - s_) * std::exp(-rate);
  if (x < 1.0) {
    s_ = x;
    return 0.0;
  }
  const double f = dynamic_slope * tf_k * (k - tf_k) / k;
  const double xi =
      1.0 / (1.0 + std::exp(-f));  // exp(-f) overflows to infinity only below -80 degC
  s_ = x - x * xi;
  return x * xi;
}

}  // namespace bulbwright
