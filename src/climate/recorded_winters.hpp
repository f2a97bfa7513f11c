#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "climate/climate.hpp"
#include "climate/place.hpp"
#include "climate/temperature_record.hpp"

namespace bulbwright {

/// Winters that a plan of one season runs on, made from a record.
struct RecordedWinters {
  std::vector<Winter> winters;  ///< on the days of the season planned
  /// Indices into winters. Of recorded years: those whose mean over the half year of cold is the
  /// median, and nearest one standard deviation above and below (the 84 % and 16 % ranks).
  std::size_t normal = 0, mild = 0, cold = 0;
  bool recorded = true;               ///< each is a recorded year, not made from normals
  std::optional<Day> measured_until;  ///< last measured day of a winter that is running
  Remark basis{};                     ///< how they were made
};

/// - The season itself is in the record, in part or whole: its measured days stand, and the rest
///   follows `continued_with` (three winters), else each other recorded winter.
/// - It is not: every recorded winter with at least 90 % of its half year of cold and the spring
///   after it (October to May, April to November in the south) is one winter, its days moved to the
///   season's dates; days it lacks come from `continued_with`, else from the record's own monthly
///   means. With no such winter the three of `continued_with` stand alone.
/// Days in order, each at most once. Season as in season_days().
/// @throws InvalidValue where the record holds no such winter and nothing continues it.
RecordedWinters winters_from_record(std::span<const RecordedDay> days, double latitude, int season,
                                    const std::optional<Place>& continued_with);

}  // namespace bulbwright
