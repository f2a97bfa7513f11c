#include "cold/cold_notices.hpp"

#include <algorithm>

#include "climate/climate.hpp"

namespace bulbwright {

std::vector<Notice> normals_notices(const ColdReport& report) {
  const Place& place = *report.place;
  std::vector<Notice> notices;
  if (place.stations > 0) {
    notices.push_back({NoticeCode::zone_alone,
                       Severity::note,
                       {},
                       {{DetailName::january, Kelvins{place.spread_k[0]}},
                        {DetailName::july, Kelvins{place.spread_k[6]}},
                        {DetailName::yearly, Kelvins{year_to_year_sd_k(place.normals)}}}});
  }
  if (place.note) {
    notices.push_back({NoticeCode::zone_stations,
                       Severity::note,
                       {},
                       {{DetailName::why, std::vector<Remark>{*place.note}}}});
  }
  notices.push_back({NoticeCode::normals_no_winter,
                     Severity::note,
                     {},
                     {{DetailName::lowest, Celsius{0.0}}, {DetailName::highest, Celsius{7.2}}}});
  double best = 0.0;
  for (const ColdTable& table : report.winters) best = std::max(best, table.total.cold_weeks);
  if (rounded(best, 0.1) <= 0.0)
    notices.push_back({NoticeCode::no_natural_cold, Severity::warning});
  return notices;
}

std::vector<Notice> record_notices(const ColdReport& report) {
  const RecordSummary& record = *report.record;
  std::vector<Notice> notices;
  if (record.filled_hours > 0 || record.filled_days > 0) {
    notices.push_back({NoticeCode::gaps_filled,
                       Severity::note,
                       {},
                       {{DetailName::hours, static_cast<int>(record.filled_hours)},
                        {DetailName::hour_limit, longest_filled_hours},
                        {DetailName::days, static_cast<int>(record.filled_days)},
                        {DetailName::day_limit, longest_filled_days}}});
  }
  if (record.rejected > 0) {
    notices.push_back({NoticeCode::values_rejected,
                       Severity::note,
                       {},
                       {{DetailName::count, static_cast<int>(record.rejected)}}});
  }
  int missing = 0;
  for (const ColdTable& table : report.winters) missing += table.missing_days;
  if (missing > 0 && report.kind == ColdReport::Kind::exact) {
    notices.push_back(
        {NoticeCode::days_missing, Severity::warning, {}, {{DetailName::count, missing}}});
  }
  return notices;
}

}  // namespace bulbwright
