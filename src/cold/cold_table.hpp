#pragma once

#include <span>
#include <string>
#include <vector>

#include "base/calendar_day.hpp"

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

/// Adds `share` of every measure to `sum`; days are left alone.
void add_share(ColdFigures& sum, const ColdFigures& figures, double share);

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
