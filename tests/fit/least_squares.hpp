#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <functional>
#include <vector>

namespace bulbwright::fit {

/// Robust least squares: minimises sum 2 (sqrt(1 + r^2) - 1) over `residuals` by Levenberg's
/// damped Gauss-Newton steps with reweighting; derivatives by differences of `step`.
/// The last `plain` residuals (priors) are squared without the robust loss.
inline std::vector<double> minimise(
    const std::function<std::vector<double>(const std::vector<double>&)>& residuals,
    std::vector<double> x, const std::vector<double>& step, std::size_t plain, int rounds,
    double* cost_out = nullptr) {
  const std::size_t n = x.size();
  const auto cost_of = [&](const std::vector<double>& r) {
    double cost = 0.0;
    for (std::size_t i = 0; i < r.size(); ++i) {
      cost += i + plain < r.size() ? 2 * (std::sqrt(1 + r[i] * r[i]) - 1) : r[i] * r[i];
    }
    return cost;
  };
  std::vector<double> r = residuals(x);
  double cost = cost_of(r), damping = 1e-2;
  for (int round = 0; round < rounds; ++round) {
    std::vector<std::vector<double>> jacobian(n);
    for (std::size_t j = 0; j < n; ++j) {
      std::vector<double> y = x;
      y[j] += step[j];
      jacobian[j] = residuals(y);
      for (std::size_t i = 0; i < r.size(); ++i) {
        jacobian[j][i] = (jacobian[j][i] - r[i]) / step[j];
      }
    }
    std::vector<double> a(n * n), g(n);
    for (std::size_t i = 0; i < r.size(); ++i) {
      const double w = i + plain < r.size() ? 1 / std::sqrt(1 + r[i] * r[i]) : 1.0;
      for (std::size_t j = 0; j < n; ++j) {
        if (jacobian[j][i] == 0.0) continue;
        g[j] += w * jacobian[j][i] * r[i];
        for (std::size_t k = 0; k <= j; ++k) a[j * n + k] += w * jacobian[j][i] * jacobian[k][i];
      }
    }
    bool better = false;
    for (int attempt = 0; attempt < 8 && !better; ++attempt) {
      std::vector<double> l = a, d = g;
      for (std::size_t j = 0; j < n; ++j) l[j * n + j] += damping * (a[j * n + j] + 1e-9);
      for (std::size_t j = 0; j < n; ++j) {  // Cholesky, then the two triangular solves
        for (std::size_t k = 0; k < j; ++k) l[j * n + j] -= l[j * n + k] * l[j * n + k];
        l[j * n + j] = std::sqrt(std::max(l[j * n + j], 1e-12));
        for (std::size_t i = j + 1; i < n; ++i) {
          for (std::size_t k = 0; k < j; ++k) l[i * n + j] -= l[i * n + k] * l[j * n + k];
          l[i * n + j] /= l[j * n + j];
        }
      }
      for (std::size_t j = 0; j < n; ++j) {
        for (std::size_t k = 0; k < j; ++k) d[j] -= l[j * n + k] * d[k];
        d[j] /= l[j * n + j];
      }
      for (std::size_t j = n; j-- > 0;) {
        for (std::size_t k = j + 1; k < n; ++k) d[j] -= l[k * n + j] * d[k];
        d[j] /= l[j * n + j];
      }
      std::vector<double> y = x;
      for (std::size_t j = 0; j < n; ++j) y[j] -= d[j];
      const std::vector<double> ry = residuals(y);
      const double cy = cost_of(ry);
      if (cy < cost) {
        better = cost - cy > 1e-5 * cost;
        x = y;
        r = ry;
        cost = cy;
        damping = std::max(damping / 4, 1e-7);
        if (!better) round = rounds;
        break;
      }
      damping *= 5;
      if (attempt == 7) round = rounds;
    }
  }
  if (cost_out) *cost_out = cost;
  return x;
}

}  // namespace bulbwright::fit
