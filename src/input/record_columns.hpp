#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/enum_words.hpp"

namespace bulbwright::input {

enum class RecordFormat { hourly, daily, ghcn_daily, gsod };
constexpr auto enum_words(RecordFormat) {
  return words_to<RecordFormat::gsod>("hourly", "daily", "GHCN-Daily", "GSOD");
}

/// How a column writes temperatures.
enum class TemperatureUnit { celsius, fahrenheit, tenths_celsius };

struct TemperatureColumn {
  std::size_t index = 0;
  TemperatureUnit unit = TemperatureUnit::celsius;
  std::optional<std::size_t> attributes;  ///< GHCN-Daily: TMAX_ATTRIBUTES, flags of the value
};

/// Where the columns of a records file are.
struct RecordColumns {
  RecordFormat format = RecordFormat::daily;
  std::size_t date = 0;                                ///< date, or date and time
  std::optional<std::size_t> time;                     ///< a time of day beside a date
  std::optional<TemperatureColumn> temperature;        ///< hourly
  std::optional<TemperatureColumn> tmin, tmax;         ///< daily
  std::optional<std::size_t> station, latitude, name;  ///< NOAA files
  std::size_t fields = 0;                              ///< of the header
};

/// Recognises the file by its header. `time` or `date` with `temperature_c` or `temperature_f` is
/// hourly; with `tmin_c` and `tmax_c` (or `_f`) daily; `STATION` and `DATE` a NOAA file as
/// published: GHCN-Daily by station (`TMAX`, `TMIN` in tenths of degC) or GSOD (`MAX`, `MIN` in
/// degF).
/// @throws InputError at line 1 that says what is missing, with a near miss; a temperature column
/// without a unit is refused.
RecordColumns find_record_columns(const std::string& file,
                                  const std::vector<std::string_view>& header);

}  // namespace bulbwright::input
