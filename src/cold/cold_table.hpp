#pragma once

#include <functional>
#include <optional>
#include <span>
#include <vector>

#include "climate/climate.hpp"
#include "climate/temperature_record.hpp"
#include "cold/chill.hpp"
#include "cold/cold.hpp"
#include "cold/pot_temperature.hpp"

namespace bulbwright {

/// The measures of cold over some days. mean_c, hours, units and portions are of the air,
/// comparable with station tables; cold_weeks are of the pot.
struct ColdFigures {
  int days = 0;
  double mean_c = 0.0;
  double hours_0_7 = 0.0;
  double utah_units = 0.0;
  double chill_portions = 0.0;
  double cold_weeks = 0.0;  ///< may be negative where warmth undoes more than comes
};

struct ColdMonth {
  int year = 0;
  unsigned month = 1;
  ColdFigures figures;
};

/// A winter's cold by month and in all; the months add up to the total (mean_c by days).
struct ColdTable {
  std::string name;  ///< of the winter
  DayWindow window;
  std::vector<ColdMonth> months;
  ColdFigures total;
  int measured_days = 0;
  int expected_days = 0;  ///< from normals or filled
  int missing_days = 0;   ///< of the window, in no way known
};

/// Days that the pot runs before a window, so that it starts in step with the weather.
inline constexpr int pot_lead_days = 14;

/// Builds a ColdTable day by day, in constant memory. Days up to pot_lead_days before the window
/// warm or cool the pot; all measures start at zero on the window's first day; later days are
/// ignored.
class ColdLedger {
 public:
  ColdLedger(DayWindow window, const PotThermal& pot, Exposure exposure);
  /// anomaly_sd_k: as PotTemperature::add(); it bears on the cold weeks alone.
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

/// A day of every year.
struct MonthDay {
  unsigned month = 1;
  unsigned day = 1;
  bool operator==(const MonthDay&) const = default;
};
/// "11-01": a real day of a year without 29 February. @throws InvalidValue.
MonthDay parse_month_day(std::string_view text);
std::string to_iso(MonthDay day);

/// Which days a table covers: the given days, or the same days of every year.
struct ColdPeriod {
  std::optional<DayWindow> exact;
  MonthDay from{10, 1};
  MonthDay to{3, 31};

  /// The window of every year that starts in `year`.
  [[nodiscard]] DayWindow starting_in(int year) const;
  /// The window that `day` lies in, or up to pot_lead_days before.
  [[nodiscard]] std::optional<DayWindow> around(Day day) const;
};
/// October to March, April to September in the south.
ColdPeriod half_year(Hemisphere hemisphere);

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

/// A winter counts in means and quantiles when at least 95 % of its days are known.
bool is_complete(const ColdTable& table);

/// Mean of the tables, month by month; all of one period.
ColdTable mean_of(std::span<const ColdTable> tables);

/// A quantile of the complete winters' totals, each measure on its own.
/// Source: Hyndman, Fan, "Sample quantiles in statistical packages", The American Statistician 50,
/// 1996, definition 7 (linear between the ordered values).
ColdFigures quantile_of(std::span<const ColdTable> tables, double share);
double quantile(std::vector<double> values, double share);

}  // namespace bulbwright
