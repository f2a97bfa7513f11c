#pragma once

namespace bulbwright {

/// The mix of a pot as one body that lags behind the air, with water that freezes and thaws at 0
/// degC. Exact for air that goes in straight lines: each stretch is a lag, or ice growing or
/// shrinking at 0 degC. Over h hours from temperature T with air from a to b, r = (b - a)/h, the
/// lag ends at b - r tau + (T - a + r tau) e^(-h/tau).
class MixHeat {
 public:
  /// tau_hours: time constant of the lag tau dT/dt = air - T. latent_k: kelvin of cooling that
  /// freezing all of it takes. Both above 0.
  MixHeat(double tau_hours, double latent_k);

  void start_at(double t_c);
  /// An hour with the air going from a to b; returns the mean temperature of the mix.
  double hour(double a, double b);
  [[nodiscard]] double temperature_c() const { return t_c_; }
  /// Share of the water that is frozen, 0 to 1.
  [[nodiscard]] double ice() const { return ice_; }

 private:
  double lag(double a, double b, double hours);
  double stretch(double a, double b, double hours);
  [[nodiscard]] double hours_to_zero(double a, double slope, double hours) const;

  double tau_;
  double latent_k_;
  double hour_decay_;
  double t_c_ = 0.0;
  double ice_ = 0.0;  // share frozen; t_c_ is 0 unless it is 0 or 1
};

}  // namespace bulbwright
