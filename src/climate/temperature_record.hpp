#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "base/calendar_day.hpp"
#include "climate/climate.hpp"
#include "climate/hourly_temperature.hpp"

namespace bulbwright {

/// Longest gaps that are filled by straight lines; a longer one leaves its days out.
inline constexpr int longest_filled_hours = 6;
inline constexpr int longest_filled_days = 3;

/// One day of a grower's or a station's own record.
struct RecordedDay {
  Day day;
  DayExtremes air;                ///< measured, or not where the whole day was filled
  std::optional<DayHours> hours;  ///< of an hourly record, clock hours 0 to 23
};

/// What a record holds, for the output to say.
struct RecordSummary {
  std::string format;              ///< "hourly", "daily", "GHCN-Daily" or "GSOD"
  std::optional<double> latitude;  ///< from a NOAA file
  std::string station;             ///< name in a NOAA file
  Day first, last;                 ///< of the days given out
  long days = 0;                   ///< given out, filled ones among them
  long readings = 0;               ///< values read
  long filled_hours = 0;           ///< within days of an hourly record
  long filled_days = 0;
  long rejected =
      0;  ///< impossible values of a NOAA file, left out; in other files they are errors
  long gap_count = 0;           ///< gaps too long to be filled
  std::vector<DayWindow> gaps;  ///< the first twenty of them
};

/// Takes the days of a record in order; `so_far` knows format, station and latitude already.
using DaySink = std::function<void(const RecordedDay&, const RecordSummary& so_far)>;

/// Takes days in order, fills short gaps between them and hands on a row of days. Constant memory.
class DayFiller {
 public:
  DayFiller(DaySink sink, RecordSummary& summary);
  /// `day` is later than the one before. Either every day has hours or none has.
  void add(const RecordedDay& day);

 private:
  void give(const RecordedDay& day);

  DaySink sink_;
  RecordSummary& summary_;
  std::optional<RecordedDay> last_;
};

/// Takes readings in order, means those of one clock hour, fills short gaps between hours and hands
/// on whole days. At both ends of the record up to longest_filled_hours are held at the nearest
/// reading. Constant memory.
class HourFiller {
 public:
  HourFiller(DayFiller& days, RecordSummary& summary);
  /// Hours since 1970-01-01 00:00 of the clock; not earlier than the one before.
  void add(long hour, double t_c);
  /// After the last reading.
  void finish();

 private:
  void close_hour();
  void place(long hour, double t_c);
  void close_day(bool at_end);

  DayFiller& days_;
  RecordSummary& summary_;
  long open_hour_ = 0;
  double open_sum_ = 0.0;
  int open_count_ = 0;
  std::optional<long> last_hour_;
  double last_c_ = 0.0;
  std::optional<int> serial_;  // the day being collected
  DayHours day_{};
  std::array<bool, 24> has_{};
  bool first_day_ = true;
};

}  // namespace bulbwright
