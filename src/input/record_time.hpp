#pragma once

#include <optional>
#include <string_view>

#include "base/calendar_day.hpp"

namespace bulbwright::input {

/// A point in clock time, to the hour.
struct RecordTime {
  Day day;
  std::optional<int> hour;  ///< 0 to 23; none where only a date is given
};

/// Reads ISO 8601 "2012-11-01", "2012-11-01T05:00", "2012-11-01 05:00:00", with seconds, fractions
/// and a zone ("Z", "-08:00", "+0530") that are checked for form and ignored; 24:00 is 0:00 of the
/// next day. Years 1900 to 2200. @throws InvalidValue.
RecordTime parse_record_time(std::string_view text);

}  // namespace bulbwright::input
