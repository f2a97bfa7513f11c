#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "base/notice.hpp"
#include "climate/place.hpp"
#include "climate/place_account.hpp"
#include "climate/temperature_record.hpp"
#include "cold/cold_period.hpp"
#include "cold/cold_table.hpp"
#include "pot/pot.hpp"

namespace bulbwright {

/// What a winter gives a pot, month by month.

struct ColdQuestion {
  Pot pot;
  Exposure exposure = Exposure::open;
  std::optional<ColdPeriod> period;  ///< absent: half_year()
};

/// Everything that `cold` found.
struct ColdReport {
  /// three: normal, mild, cold. exact: one table of given days of a record. yearly: a table for
  /// each recorded winter, with their mean.
  enum class Kind { three, exact, yearly };

  Kind kind = Kind::three;
  std::optional<Place> place;           ///< none with records alone
  std::optional<RecordSummary> record;  ///< where there is one, continued with `place`
  PlaceAccount account{};               ///< of `place`
  std::optional<double> latitude;       ///< degrees, south negative
  double winters_apart_k = 0.0;  ///< three: mild and cold from the normal winter, year's mean
  std::string pot_name;          ///< may be empty
  std::string material;
  Litres pot_volume;  ///< of mix
  Exposure exposure = Exposure::open;
  double lag_hours = 0.0;   ///< of the mix behind the air
  double swing_left = 1.0;  ///< of the air's daily swing
  ColdPeriod period;
  std::vector<ColdTable> winters;  ///< normal, mild, cold; or as recorded
  ColdTable mean;                  ///< yearly: of the complete winters
  ColdFigures low, middle, high;   ///< yearly: 10 %, 50 % and 90 % of the complete winters
  std::vector<Notice> notices;
};

/// From the normals of a place.
/// @throws InvalidValue ("to") for an exact period longer than a year.
ColdReport cold_answer(const Place& place, const ColdQuestion& question);

/// Hands the days of a record on in order and returns its summary.
using RecordSource = std::function<RecordSummary(const DaySink&)>;

/// From a record in constant memory, continued with the normals of `place` where there is one; a
/// record without a whole winter is then only compared with them (Kind::three).
/// `latitude` may be absent where the record tells it, or where hourly readings of an exact period
/// do not need it.
/// @throws InvalidValue ("place.latitude", "place.records", "from") for a record that does not hold
/// the days asked for or lacks its latitude; and what `record` throws.
ColdReport cold_answer(const RecordSource& record, const std::optional<Place>& place,
                       std::optional<double> latitude, const ColdQuestion& question);

}  // namespace bulbwright
