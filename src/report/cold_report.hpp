#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/notice.hpp"
#include "cold/cold_table.hpp"
#include "report/text_style.hpp"

namespace bulbwright::report {

/// What `cold` found, ready to print.
struct ColdReport {
  /// three: normal, mild, cold. exact: one table of given days of a record. yearly: a table for
  /// each recorded winter, with their mean.
  enum class Kind { three, exact, yearly };

  Kind kind = Kind::three;
  std::string place;
  std::string basis;  ///< where the figures come from, in words
  std::optional<double> latitude;
  std::string pot;  ///< in words
  double pot_litres = 0.0;
  double tau_hours = 0.0;
  double swing_left = 1.0;  ///< of the air's daily swing
  Exposure exposure = Exposure::open;
  std::string from, to;            ///< ISO dates, or month-day where of every year
  std::vector<ColdTable> winters;  ///< normal, mild, cold; or as recorded
  ColdTable mean;                  ///< yearly: of the complete winters
  ColdFigures low, middle, high;   ///< yearly: 10 %, 50 % and 90 % of the complete winters
  std::optional<RecordSummary> record;
  std::vector<Notice> notices;
};

std::string cold_text(const ColdReport& report, const TextStyle& style);
std::string cold_json(const ColdReport& report);
/// One row a winter and month, and a row "total" a winter.
std::string cold_csv(const ColdReport& report);

}  // namespace bulbwright::report
