#pragma once

namespace bulbwright {

/// The orchard measures of cold, of the air, for comparison with published station tables. All
/// thresholds are compared with chill_tie_k of tolerance: 64.4 degF is 18.0 degC and comes out as
/// 18.000000000000004.
inline constexpr double chill_tie_k = 1e-9;

/// 0 to 7.2 degC, both ends in (32 to 45 degF).
bool is_chill_hour(double t_c);

/// Utah units of an hour: to 1.4 degC 0, to 2.4 0.5, to 9.1 1, to 12.4 0.5, to 15.9 0, to 18 -0.5,
/// above -1; the upper ends belong to the step.
/// Source: Richardson, Seeley, Walker, "A model for estimating the completion of rest for Redhaven
/// and Elberta peach trees", HortScience 9(4), 1974, 331-332, in the Celsius steps in common use.
double utah_unit(double t_c);

/// The same means over a normal distribution of temperatures about t_c: what hours are worth that
/// differ from what is expected of them by `sd_k`. Exact: each step by its share of the
/// distribution. With sd_k = 0 the hour as it stands.
double mean_chill_hour(double t_c, double sd_k);
double mean_utah_unit(double t_c, double sd_k);

/// The Dynamic Model, hour by hour.
/// Source: Fishman, Erez, Couvillon, "The temperature dependence of dormancy breaking in plants",
/// J. Theor. Biol. 124, 1987, 473-483, and 126, 1987, 309-321; constants e0 = 4153.5, e1 =
/// 12888.8, a0 = 139500, a1 = 2.567e18, slope 1.6, Tf = 277 K, with K = degC + 273.
/// Each hour: xs = a0/a1 exp((e1 - e0)/K), k = a1 exp(-e1/K), x = xs - (xs - s) exp(-k),
/// f = slope Tf (K - Tf)/K, xi = 1/(1 + exp(-f)). Where x >= 1 the hour books x xi and leaves
/// s = x (1 - xi), else s = x. Every hour counts; other programs leave out the first or the last
/// of a record, which moves a season by 0.1 % at most.
class DynamicModel {
 public:
  /// Takes an hour in; returns the portions that it books (0, or about 1).
  double step(double t_c);

 private:
  double s_ = 0.0;
};

}  // namespace bulbwright
