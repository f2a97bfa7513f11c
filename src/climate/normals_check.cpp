#include "climate/normals_check.hpp"

namespace bulbwright {

std::vector<NormalsFault> normals_faults(const MonthlyNormals& normals) {
  using Kind = NormalsFault::Kind;
  const auto is_mean = [](double value) {
    return value >= least_monthly_mean.value() && value <= most_monthly_mean.value();
  };
  std::vector<NormalsFault> faults;
  for (std::size_t m = 0; m < 12; ++m) {
    const bool minimum = is_mean(normals.tmin_c[m]), maximum = is_mean(normals.tmax_c[m]);
    if (!minimum) faults.push_back({Kind::minimum_out_of_range, m});
    if (!maximum) faults.push_back({Kind::maximum_out_of_range, m});
    if (minimum && maximum && !(normals.tmin_c[m] < normals.tmax_c[m]))
      faults.push_back({Kind::not_below_maximum, m});
  }
  return faults;
}

}  // namespace bulbwright
