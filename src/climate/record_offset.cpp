#include "climate/record_offset.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/core.h>

#include "base/error.hpp"
#include "climate/climate.hpp"
#include "climate/normals_check.hpp"

namespace bulbwright {
namespace {

constexpr double step_k = 0.1;
constexpr double season_days_compared = 90.0;

/// The day of a leap year, in which every date has its place.
std::size_t day_of_leap_year(Day day) {
  return static_cast<std::size_t>(Day{2000, day.month(), day.day()}.day_of_year() - 1);
}

}  // namespace

RecordComparison::RecordComparison(const Place& place)
    : low_{daily_from_monthly(place.normals.tmin_c, true)},
      high_{daily_from_monthly(place.normals.tmax_c, true)},
      winter_sd_k_{year_to_year_sd_k(place.normals)} {
  for (double& low : low_) low -= place.offset.nights.value();
  for (double& high : high_) high -= place.offset.days.value();
}

void RecordComparison::count(Counts& counts, double difference_k) {
  const auto middle = static_cast<long>(counts.size() / 2);
  const long at = middle + std::lround(rounded(difference_k / step_k, 1e-6));
  ++counts[static_cast<std::size_t>(std::clamp(at, 0L, 2 * middle))];
}

void RecordComparison::add(const RecordedDay& day) {
  if (!day.air.measured) return;
  const std::size_t at = day_of_leap_year(day.day);
  count(low_counts_, day.air.tmin_c - low_[at]);
  count(high_counts_, day.air.tmax_c - high_[at]);
  ++days_;
}

double RecordComparison::median_k(const Counts& counts) const {
  int below = 0;
  std::size_t at = 0;
  while (2 * (below += counts[at]) < days_) ++at;
  return rounded((static_cast<double>(at) - static_cast<double>(counts.size() / 2)) * step_k,
                 step_k);
}

std::optional<RecordOffset> RecordComparison::result() const {
  if (days_ < fewest_compared_days) return std::nullopt;
  RecordOffset offset;
  offset.median = {Kelvins{median_k(low_counts_)}, Kelvins{median_k(high_counts_)}};
  offset.days = days_;
  offset.weather = Kelvins{rounded(winter_sd_k_ * std::sqrt(season_days_compared / days_), 0.1)};
  return offset;
}

Place moved_by(Place place, TemperatureOffset offset) {
  for (std::size_t m = 0; m < 12; ++m) {
    place.normals.tmin_c[m] += offset.nights.value();
    place.normals.tmax_c[m] += offset.days.value();
  }
  place.offset = offset;
  const std::vector<NormalsFault> faults = normals_faults(place.normals);
  if (faults.empty()) return place;
  throw InvalidValue{
      "offset",
      faults.front().kind == NormalsFault::Kind::not_below_maximum
          ? fmt::format("moves the minimum of month {} to its maximum; expected a smaller "
                        "difference between nights and days",
                        faults.front().month + 1)
          : std::string{"moves the normals beyond what is measured on earth"}};
}

}  // namespace bulbwright
