#pragma once

#include <functional>
#include <optional>
#include <vector>

#include "climate/temperature_record.hpp"
#include "cold/cold_ledger.hpp"
#include "cold/cold_period.hpp"

namespace bulbwright {

/// Tables of a record that comes day by day: of the exact days, or of each year. Constant memory
/// but for one table a winter.
class ColdSurvey {
 public:
  /// Latitude shapes the hours of daily records. `expected` gives the days that the record lacks in
  /// an exact period; empty where nothing is known.
  ColdSurvey(ColdPeriod period, double latitude, const PotThermal& pot, Exposure exposure,
             std::function<DayExtremes(Day)> expected = {});
  void add(const RecordedDay& day);
  /// The tables in order; a winter without any measured day has none.
  std::vector<ColdTable> finish();

 private:
  void take(const RecordedDay& day);
  void give(const RecordedDay* next);
  void close();

  ColdPeriod period_;
  double latitude_;
  PotThermal pot_;
  Exposure exposure_;
  std::function<DayExtremes(Day)> expected_;
  std::optional<ColdLedger> ledger_;
  DayWindow window_;
  std::optional<RecordedDay> before_, held_;
  std::vector<ColdTable> tables_;
};

}  // namespace bulbwright
