#pragma once

#include <array>
#include <map>
#include <optional>
#include <span>
#include <utility>

#include "base/calendar_day.hpp"
#include "base/quantity.hpp"
#include "climate/place.hpp"
#include "climate/temperature_record.hpp"

namespace bulbwright {

/// What the hardest frost of a usual year depends on, of a place or of a record.
struct FrostClimate {
  double latitude = 0.0;    ///< degrees, south negative
  int month = 1;            ///< the coldest, 1 to 12
  double tmin_c = 0.0;      ///< its mean daily minimum
  double tmax_c = 0.0;      ///< its mean daily maximum
  Celsius annual_low{0.0};  ///< mean over the years of the lowest air temperature

  bool operator==(const FrostClimate&) const = default;
};

FrostClimate frost_climate(const Place& place);

/// Monthly means and yearly lows of a record, taken day by day; memory for a figure a month.
class RecordedNormals {
 public:
  explicit RecordedNormals(std::span<const RecordedDay> days = {});
  void add(const RecordedDay& day);
  /// The mean of its days by month.
  /// @returns nothing where a month has fewer than 20 days in all.
  [[nodiscard]] std::optional<MonthlyNormals> normals() const;
  /// Mean over the recorded years (with at least 300 days) of the lowest minimum; nothing where
  /// there is no such year.
  [[nodiscard]] std::optional<Celsius> annual_low(Hemisphere hemisphere) const;
  /// Of the record, where it knows all months and a whole year; what it does not know is of
  /// `place`, else of the coldest month that it knows, with estimated_annual_low().
  /// @returns nothing where neither tells a month.
  [[nodiscard]] std::optional<FrostClimate> frost(double latitude,
                                                  const std::optional<Place>& place) const;

 private:
  struct Month {
    int days = 0;
    double tmin_sum_c = 0.0, tmax_sum_c = 0.0, lowest_c = 0.0;
  };
  [[nodiscard]] std::array<Month, 12> of_all_years() const;

  std::map<std::pair<int, unsigned>, Month> months_;  // by year and month
};

}  // namespace bulbwright
