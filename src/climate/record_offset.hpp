#pragma once

#include <array>
#include <optional>
#include <set>
#include <vector>

#include "climate/place.hpp"
#include "climate/temperature_record.hpp"

namespace bulbwright {

/// Fewest measured days that a record is compared with normals over.
inline constexpr int fewest_compared_days = 30;

/// How much warmer a record is than its place's normals over the same days of the year: a warm
/// wall, a frost hollow, and in part that winter's weather.
struct RecordOffset {
  /// Medians of the daily differences, to 0.1 K; of the normals before any offset.
  TemperatureOffset median;
  int days = 0;  ///< compared
  /// Standard deviation by which the weather alone moves so many days from their normals: that of a
  /// winter's mean (year_to_year_sd_k) times sqrt(90 days / days). This program's own rule.
  Kelvins weather{0.0};
};

/// Compares a record day by day with the normals of a place, in constant memory.
class RecordComparison {
 public:
  explicit RecordComparison(const Place& place);
  /// Days that were filled are passed over.
  void add(const RecordedDay& day);
  /// Nothing with fewer than fewest_compared_days.
  [[nodiscard]] std::optional<RecordOffset> result() const;

 private:
  /// Differences counted in steps of 0.1 K from -40 to +40 K, held at the ends.
  using Counts = std::array<int, 801>;
  static void count(Counts& counts, double difference_k);
  [[nodiscard]] double median_k(const Counts& counts) const;

  std::vector<double> low_, high_;  ///< expected, by day of a leap year
  Counts low_counts_{}, high_counts_{};
  int days_ = 0;
  double winter_sd_k_ = 0.0;
};

/// The place with its normals moved.
/// @throws InvalidValue ("offset") where a minimum would reach its maximum, or a mean no mean on
/// earth.
Place moved_by(Place place, TemperatureOffset offset);

}  // namespace bulbwright
