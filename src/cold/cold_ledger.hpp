#pragma once

#include "climate/climate.hpp"
#include "cold/chill.hpp"
#include "cold/cold.hpp"
#include "cold/cold_period.hpp"
#include "cold/cold_table.hpp"
#include "cold/pot_temperature.hpp"

namespace bulbwright {

/// Builds a ColdTable day by day, in constant memory. Days up to pot_lead_days before the window
/// warm or cool the pot; all measures start at zero on the window's first day; later days are
/// ignored.
class ColdLedger {
 public:
  ColdLedger(DayWindow window, const PotThermal& pot, Exposure exposure);
  /// anomaly_sd_k: as PotTemperature::add(); it bears on cold weeks, hours and Utah units. The
  /// Dynamic Model takes the hours as they stand.
  void add(Day day, const DayHours& air_c, bool measured, double anomaly_sd_k = 0.0);
  [[nodiscard]] ColdTable table() const;

 private:
  void close_month();

  ColdTable table_;
  PotTemperature pot_;
  DynamicModel dynamic_;
  ColdState cold_;
  double weeks_before_month_ = 0.0;
  double month_sum_c_ = 0.0;
  double sum_c_ = 0.0;
};

/// A winter's table over a window of its days.
ColdTable cold_table(const Winter& winter, DayWindow window, const PotThermal& pot,
                     Exposure exposure);

}  // namespace bulbwright
