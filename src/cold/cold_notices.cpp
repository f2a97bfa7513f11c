#include "cold/cold_notices.hpp"

#include <algorithm>

#include <fmt/core.h>

#include "climate/climate.hpp"

namespace bulbwright {

std::vector<Notice> normals_notices(const ColdReport& report) {
  const Place& place = *report.place;
  std::vector<Notice> notices;
  if (place.stations > 0) {
    notices.push_back(
        {"zone-alone", Severity::note,
         fmt::format(
             "A zone tells only the lowest temperature of a year: its stations differ by "
             "{:.1f} °C (one standard deviation) in January and {:.1f} °C in July beside the "
             "{:.1f} °C from year to year. A site or your own normals narrow every figure.",
             rounded(place.spread_k[0], 0.1), rounded(place.spread_k[6], 0.1),
             rounded(year_to_year_sd_k(place.normals), 0.1))});
  }
  if (!place.note.empty()) {
    notices.push_back(
        {"zone-stations", Severity::note, fmt::format("About this zone: {}.", place.note)});
  }
  notices.push_back(
      {"normals-no-winter", Severity::note,
       "Normals hold no cold or warm spells: hours at 0-7.2 °C can be wrong by a factor of two, "
       "portions by a tenth. Records of real winters do better."});
  double best = 0.0;
  for (const ColdTable& table : report.winters) best = std::max(best, table.total.cold_weeks);
  if (rounded(best, 0.1) <= 0.0) {
    notices.push_back({"no-natural-cold", Severity::warning,
                       "There is no natural cold here: all of it must come from the "
                       "refrigerator."});
  }
  return notices;
}

std::vector<Notice> record_notices(const ColdReport& report) {
  const RecordSummary& record = *report.record;
  std::vector<Notice> notices;
  if (record.filled_hours > 0 || record.filled_days > 0) {
    notices.push_back(
        {"gaps-filled", Severity::note,
         fmt::format("{} hours (gaps up to {}) and {} days (gaps up to {}) were filled by straight "
                     "lines.",
                     record.filled_hours, longest_filled_hours, record.filled_days,
                     longest_filled_days)});
  }
  if (record.rejected > 0) {
    notices.push_back(
        {"values-rejected", Severity::note,
         fmt::format("{} values that failed the station's own checks, or cannot be, were left out.",
                     record.rejected)});
  }
  int missing = 0;
  for (const ColdTable& table : report.winters) missing += table.missing_days;
  if (missing > 0 && report.kind == ColdReport::Kind::exact) {
    notices.push_back(
        {"days-missing", Severity::warning,
         fmt::format("{} of the days have no readings: the totals are too low.", missing)});
  }
  return notices;
}

std::vector<Notice> frost_notices(const Place& place, const PotThermal& pot, Exposure exposure) {
  const double low = lowest_in_frost(place, pot, exposure).value();
  if (low >= roots_hurt_below_c) return {};
  return {{"pot-freezes", Severity::warning,
           fmt::format(
               "In a usual year's hardest frost (air {:.0f} °C) the mix of this pot falls to about "
               "{:.0f} °C; roots in pots are hurt below -4 °C. Shelter it, or sink it in the "
               "ground.",
               rounded(annual_low(place).value(), 1.0), rounded(low, 1.0))}};
}

}  // namespace bulbwright
