#pragma once

#include <cstddef>
#include <vector>

#include "climate/place.hpp"

namespace bulbwright {

/// Monthly means on earth lie well within these.
inline constexpr Celsius least_monthly_mean{-70.0}, most_monthly_mean{60.0};

/// What is wrong with one month of normals; a reader words it in the unit that was written.
struct NormalsFault {
  enum class Kind { minimum_out_of_range, maximum_out_of_range, not_below_maximum };
  Kind kind = Kind::not_below_maximum;
  std::size_t month = 0;  ///< January 0
};
/// Every value within least_monthly_mean to most_monthly_mean, each minimum below its maximum.
std::vector<NormalsFault> normals_faults(const MonthlyNormals& normals);

}  // namespace bulbwright
