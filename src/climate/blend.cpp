#include "climate/blend.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numbers>

namespace bulbwright {
namespace {

constexpr double share_length_km = 300.0, share_height_km = 1.5, share_power = 1.2;
constexpr double noise = 0.01;             // of the shared variance
constexpr double level_variance = 400.0;   // no idea of the level beforehand
constexpr double slope_sd_per_km = 0.007;  // of the shared deviation, a kilometre
constexpr double lapse_k_per_km = 4.5, lapse_sd_k_per_km = 1.0;
/// The shared deviation before the stations tell: 1 K, worth as many stations as stands here.
constexpr double prior_variance_k2 = 1.0, prior_stations = 6.0;
/// Measured errors over those the model expects, all stations left out in turn.
constexpr double error_scale = 1.15;
constexpr std::size_t nearest_for_height = 6;
constexpr double height_length_km = 10.0;
/// Rain is blended by its logarithm, so much added that none at all has one, millimetres.
constexpr double rain_ground_mm = 10.0;
/// Behind the mountains the weights may go beyond the stations: so many times the wettest.
constexpr double most_rain_of_stations = 1.5;

/// Kilometres east, north and up from the place.
struct Offset {
  double east_km = 0.0, north_km = 0.0, up_km = 0.0;
};

Offset offset_of(const Station& station, GeoPoint at, double elevation_m) {
  double degrees = station.position.longitude - at.longitude;
  if (degrees > 180.0) degrees -= 360.0;
  if (degrees < -180.0) degrees += 360.0;
  constexpr double km_per_degree = 6371.0 * std::numbers::pi / 180.0;
  return {degrees * km_per_degree * std::cos(at.latitude * std::numbers::pi / 180.0),
          (station.position.latitude - at.latitude) * km_per_degree,
          (station.elevation_m - elevation_m) / 1000.0};
}

double covariance(const Offset& a, const Offset& b, double distance_km) {
  const double flat = distance_km / share_length_km;
  const double height = (a.up_km - b.up_km) / share_height_km;
  const double shared = std::exp(-std::pow(std::hypot(flat, height), share_power));
  const double slope =
      slope_sd_per_km * slope_sd_per_km * (a.east_km * b.east_km + a.north_km * b.north_km);
  const double lapse = lapse_sd_k_per_km * lapse_sd_k_per_km * a.up_km * b.up_km;
  return level_variance + shared + slope + lapse;
}

/// The Cholesky factor of a positive definite matrix, and what is solved with it.
class Factor {
 public:
  explicit Factor(std::size_t n) : n_{n}, lower_(n * n) {}

  double& at(std::size_t row, std::size_t column) { return lower_[row * n_ + column]; }

  void factorize() {
    for (std::size_t r = 0; r < n_; ++r) {
      for (std::size_t c = 0; c <= r; ++c) {
        double sum = at(r, c);
        for (std::size_t k = 0; k < c; ++k) sum -= at(r, k) * at(c, k);
        at(r, c) = c == r ? std::sqrt(std::max(sum, 1e-12)) : sum / at(c, c);
      }
    }
  }

  [[nodiscard]] std::vector<double> solved(std::vector<double> values) {
    for (std::size_t r = 0; r < n_; ++r) {
      for (std::size_t k = 0; k < r; ++k) values[r] -= at(r, k) * values[k];
      values[r] /= at(r, r);
    }
    for (std::size_t r = n_; r-- > 0;) {
      for (std::size_t k = r + 1; k < n_; ++k) values[r] -= at(k, r) * values[k];
      values[r] /= at(r, r);
    }
    return values;
  }

 private:
  std::size_t n_;
  std::vector<double> lower_;
};

double dot(const std::vector<double>& a, const std::vector<double>& b) {
  double sum = 0.0;
  for (std::size_t i = 0; i < a.size(); ++i) sum += a[i] * b[i];
  return sum;
}

/// Mean over the nearest few of what `of` takes from a station, by (distance + 10 km)^-2.
template <class Of>
double mean_of_nearest(std::span<const Station> around, GeoPoint at, Of of) {
  double sum = 0.0, weights = 0.0;
  for (const Station& station : around.first(std::min(around.size(), nearest_for_height))) {
    const double weight = std::pow(distance_km(station.position, at) + height_length_km, -2);
    sum += weight * of(station);
    weights += weight;
  }
  return sum / weights;
}

/// Spread of the nearest stations' heights about one, kilometres.
double height_spread_km(std::span<const Station> around, GeoPoint at, double elevation_m) {
  return std::sqrt(mean_of_nearest(around, at, [&](const Station& station) {
    return std::pow((station.elevation_m - elevation_m) / 1000.0, 2);
  }));
}

double rain_of_month(std::span<const Station> around, const std::vector<double>& weights,
                     std::size_t month) {
  double sum = 0.0, wettest = 0.0;
  for (std::size_t i = 0; i < around.size(); ++i) {
    const double rain_mm = around[i].rain_mm[month];
    sum += weights[i] * std::log(rain_mm + rain_ground_mm);
    wettest = std::max(wettest, rain_mm);
  }
  return rounded(std::clamp(std::exp(sum) - rain_ground_mm, 0.0, most_rain_of_stations * wettest),
                 1.0);
}

/// Weights of the stations and the variance that they leave, of the shared one.
class Kriging {
 public:
  Kriging(std::span<const Station> around, GeoPoint at, double elevation_m)
      : around_{around}, factor_{around.size()}, covariances_(around.size()) {
    std::vector<Offset> offsets;
    for (const Station& station : around) offsets.push_back(offset_of(station, at, elevation_m));
    const Offset here;
    for (std::size_t r = 0; r < around.size(); ++r) {
      for (std::size_t c = 0; c <= r; ++c) {
        const double km = distance_km(around[r].position, around[c].position);
        factor_.at(r, c) = covariance(offsets[r], offsets[c], km) + (r == c ? noise : 0.0);
      }
      covariances_[r] = covariance(offsets[r], here, distance_km(around[r].position, at));
      heights_km_.push_back(offsets[r].up_km);
    }
    factor_.factorize();
    weights_ = factor_.solved(covariances_);
    variance_ = std::max(0.0, covariance(here, here, 0.0) + noise - dot(weights_, covariances_));
  }

  struct Value {
    double mean = 0.0;
    double local_variance_k2 = 0.0;  ///< of the shared remainder among these stations
  };
  /// What the stations' `values` give at the place.
  [[nodiscard]] Value value(std::vector<double> values) {
    const auto n = static_cast<double>(values.size());
    double mean = 0.0;
    for (std::size_t i = 0; i < values.size(); ++i) {
      values[i] += lapse_k_per_km * heights_km_[i];
      mean += values[i] / n;
    }
    for (double& one : values) one -= mean;
    const double squares = dot(values, factor_.solved(values));
    return {mean + dot(weights_, values),
            (squares + prior_stations * prior_variance_k2) / (n + prior_stations)};
  }

  [[nodiscard]] double variance() const { return variance_; }

  /// Weights of the stations' own values: what the solution leaves of 1 falls to their mean.
  [[nodiscard]] std::vector<double> weights() const {
    double sum = 0.0;
    for (const double weight : weights_) sum += weight;
    std::vector<double> weights = weights_;
    for (double& weight : weights) weight += (1.0 - sum) / static_cast<double>(weights.size());
    return weights;
  }

 private:
  std::span<const Station> around_;
  Factor factor_;
  std::vector<double> covariances_, weights_, heights_km_;
  double variance_ = 0.0;
};

}  // namespace

Blend blended(std::span<const Station> around, GeoPoint at, std::optional<double> elevation_m) {
  assert(!around.empty());
  Blend blend;
  blend.elevation_assumed = !elevation_m;
  blend.elevation_m = elevation_m.value_or(
      mean_of_nearest(around, at, [](const Station& station) { return station.elevation_m; }));
  const double unknown_height_k =
      elevation_m ? 0.0 : lapse_k_per_km * height_spread_km(around, at, blend.elevation_m);
  Kriging kriging{around, at, blend.elevation_m};
  blend.weights = kriging.weights();
  std::vector<double> low(around.size()), high(around.size());
  for (std::size_t m = 0; m < 12; ++m) {
    for (std::size_t i = 0; i < around.size(); ++i) {
      low[i] = around[i].normals.tmin_c[m];
      high[i] = around[i].normals.tmax_c[m];
    }
    const auto minimum = kriging.value(low), maximum = kriging.value(high);
    blend.normals.tmin_c[m] = rounded(minimum.mean, 0.01);
    // Never crossed: far from stations the two are independent.
    blend.normals.tmax_c[m] =
        std::max(rounded(maximum.mean, 0.01), rounded(minimum.mean + 0.5, 0.01));
    const double local = (minimum.local_variance_k2 + maximum.local_variance_k2) / 2;
    blend.error_k[m] = rounded(
        std::hypot(error_scale * std::sqrt(kriging.variance() * local), unknown_height_k), 0.01);
    blend.rain_mm[m] = rain_of_month(around, blend.weights, m);
  }
  return blend;
}

}  // namespace bulbwright
