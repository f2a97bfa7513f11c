#pragma once

#include <string>

#include "climate/temperature_record.hpp"
#include "input/input_files.hpp"

namespace bulbwright::input {

/// Coldest and warmest air that is believed, degC: beyond anything ever measured at a station.
inline constexpr double least_air_c = -90.0, most_air_c = 60.0;

/// Reads a records file ("-": standard input) of any length in constant memory and hands its days
/// on in order, short gaps filled.
///
/// Rows run forward in time, columns in any order, others ignored. Times are clock times; a zone
/// behind them is ignored; readings within one hour are averaged, as is an hour that comes twice
/// when clocks go back. An empty field or NA is a missing value. NOAA files are read as published:
/// values that failed their quality control, 9999.9 and impossible ones are left out and counted;
/// a day that comes twice counts once.
/// @throws InputError with the line of every fault (the first hundred): an impossible value, a
/// minimum above its maximum, no date, a row out of order, two stations in one file.
RecordSummary read_records(const std::string& path, InputFiles& inputs, const DaySink& sink);

}  // namespace bulbwright::input
