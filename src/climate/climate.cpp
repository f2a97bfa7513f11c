#include "climate/climate.hpp"

#include <algorithm>
#include <cmath>

namespace bulbwright {
namespace {

constexpr std::size_t months = 12;
using Twelve = std::array<double, months>;

constexpr int days_before_season = 31;
constexpr int days_after_season = 62;
constexpr double warmest_sd_k = 2.3, coldest_sd_k = 1.2, sd_per_k_of_range = 0.15;

std::array<int, months> month_lengths(bool leap_year) {
  return {31, leap_year ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
}

/// Gaussian elimination with partial pivoting; the matrix is diagonally dominant, so it is regular.
Twelve solve(std::array<Twelve, months> a, Twelve b) {
  for (std::size_t c = 0; c < months; ++c) {
    std::size_t pivot = c;
    for (std::size_t r = c + 1; r < months; ++r) {
      if (std::abs(a[r][c]) > std::abs(a[pivot][c])) pivot = r;
    }
    std::swap(a[c], a[pivot]);
    std::swap(b[c], b[pivot]);
    for (std::size_t r = 0; r < months; ++r) {
      if (r == c || a[r][c] == 0.0) continue;
      const double f = a[r][c] / a[c][c];
      for (std::size_t k = c; k < months; ++k) a[r][k] -= f * a[c][k];
      b[r] -= f * b[c];
    }
  }
  for (std::size_t i = 0; i < months; ++i) b[i] /= a[i][i];
  return b;
}

Twelve month_end_values(const Twelve& mean, const std::array<int, months>& length) {
  std::array<Twelve, months> a{};
  Twelve b{};
  for (std::size_t i = 0; i < months; ++i) {
    const std::size_t before = (i + months - 1) % months;
    a[i][before] += 2.0 / length[before];
    a[i][i] += 4.0 / length[before] + 4.0 / length[i];
    a[i][(i + 1) % months] += 2.0 / length[i];
    b[i] = 6.0 * mean[before] / length[before] + 6.0 * mean[i] / length[i];
  }
  return solve(a, b);
}

/// Daily values by calendar year, made when first asked for.
class DailyCurves {
 public:
  explicit DailyCurves(const MonthlyNormals& normals) : normals_{normals} {}

  DayExtremes at(Day day) {
    const bool leap = is_leap_year(day.year());
    Curve& curve = leap ? leap_ : common_;
    if (curve.tmin.empty()) {
      curve.tmin = daily_from_monthly(normals_.tmin_c, leap);
      curve.tmax = daily_from_monthly(normals_.tmax_c, leap);
    }
    const auto i = static_cast<std::size_t>(day.day_of_year() - 1);
    // Close extremes in odd normals may cross between the months: the mean is kept.
    const auto [low, high] = std::minmax(curve.tmin[i], curve.tmax[i]);
    return {low, high, false};
  }

 private:
  struct Curve {
    std::vector<double> tmin, tmax;
  };
  MonthlyNormals normals_;
  Curve common_, leap_;
};

}  // namespace

DayWindow winter_days(int season, Hemisphere hemisphere) {
  const DayWindow days = season_days(season, hemisphere);
  return {days.first - days_before_season, days.last + days_after_season};
}

std::vector<double> daily_from_monthly(const std::array<double, 12>& monthly, bool leap_year) {
  const auto length = month_lengths(leap_year);
  const Twelve end = month_end_values(monthly, length);
  std::vector<double> days;
  days.reserve(366);
  for (std::size_t i = 0; i < months; ++i) {
    const double u = end[i], v = end[(i + 1) % months], m = monthly[i];
    const auto integral = [&](double x) {
      return u * (x - 2 * x * x + x * x * x) + v * (x * x * x - x * x) +
             m * (3 * x * x - 2 * x * x * x);
    };
    for (int d = 0; d < length[i]; ++d) {
      const double from = static_cast<double>(d) / length[i];
      const double to = static_cast<double>(d + 1) / length[i];
      days.push_back((integral(to) - integral(from)) * length[i]);
    }
  }
  return days;
}

double year_to_year_sd_k(const MonthlyNormals& normals) {
  return is_maritime(normals) ? 1.2 : 2.0;
}

double day_to_day_sd_k(const MonthlyNormals& normals, double mean_c) {
  const auto means = monthly_means(normals);
  const auto [low, high] = std::ranges::minmax(means);
  const double range = std::max(high - low, 1.0);
  const double way = std::clamp((high - mean_c) / range, 0.0, 1.0);
  const double coldest = coldest_sd_k + sd_per_k_of_range * range;
  return warmest_sd_k + (coldest - warmest_sd_k) * way * way;
}

std::array<double, 12> winter_deviation_k(const Place& place) {
  const double sd = year_to_year_sd_k(place.normals);
  std::array<double, 12> deviation{};
  for (std::size_t m = 0; m < months; ++m) {
    deviation[m] = std::sqrt(sd * sd + place.spread_k[m] * place.spread_k[m]);
  }
  return deviation;
}

std::array<Winter, 3> winters_from_normals(const Place& place, int season) {
  const DayWindow window = winter_days(season, hemisphere_of(place));
  const auto deviation = winter_deviation_k(place);
  const auto winter = [&](const char* name, double side) {
    MonthlyNormals shifted = place.normals;
    for (std::size_t m = 0; m < months; ++m) {
      shifted.tmin_c[m] += side * deviation[m];
      shifted.tmax_c[m] += side * deviation[m];
    }
    DailyCurves curves{shifted};
    Winter result{name, place.latitude, window.first, {}, {}};
    for (Day day = window.first; day <= window.last; ++day) {
      DayExtremes extremes = curves.at(day);
      extremes.anomaly_sd_k = day_to_day_sd_k(shifted, extremes.mean_c());
      result.days.push_back(extremes);
    }
    return result;
  };
  return {winter("normal", 0.0), winter("mild", 1.0), winter("cold", -1.0)};
}

}  // namespace bulbwright
