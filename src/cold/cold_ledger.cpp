#include "cold/cold_ledger.hpp"

#include <algorithm>

namespace bulbwright {

ColdLedger::ColdLedger(DayWindow window, const PotThermal& pot, Exposure exposure)
    : pot_{pot, exposure} {
  table_.window = window;
}

void ColdLedger::close_month() {
  if (table_.months.empty()) return;
  ColdFigures& figures = table_.months.back().figures;
  if (figures.days > 0) figures.mean_c = month_sum_c_ / (24.0 * figures.days);
  figures.cold_weeks = cold_.weeks().value() - weeks_before_month_;
  // What warmth undoes it takes from the newest cold.
  for (std::size_t m = table_.months.size() - 1; m > 0; --m) {
    ColdFigures& later = table_.months[m].figures;
    if (later.cold_weeks >= 0.0) break;
    table_.months[m - 1].figures.cold_weeks += later.cold_weeks;
    later.cold_weeks = 0.0;
  }
  weeks_before_month_ = cold_.weeks().value();
  month_sum_c_ = 0.0;
}

void ColdLedger::add(Day day, const DayHours& air_c, bool measured, double anomaly_sd_k) {
  if (day > table_.window.last) return;
  const PotDay in_pot = pot_.add(air_c, anomaly_sd_k);
  if (day < table_.window.first) return;
  if (table_.months.empty() || table_.months.back().month != day.month() ||
      table_.months.back().year != day.year()) {
    close_month();
    table_.months.push_back({day.year(), day.month(), {}});
  }
  ColdFigures& month = table_.months.back().figures;
  for (const double t_c : air_c) {
    month_sum_c_ += t_c;
    sum_c_ += t_c;
    month.hours_0_7 += mean_chill_hour(t_c, anomaly_sd_k);
    month.utah_units += mean_utah_unit(t_c, anomaly_sd_k);
    month.chill_portions += dynamic_.step(t_c);
  }
  cold_.add(in_pot);
  ++month.days;
  ++(measured ? table_.measured_days : table_.expected_days);
}

ColdTable ColdLedger::table() const {
  ColdLedger closed = *this;
  closed.close_month();
  ColdTable table = closed.table_;
  for (const ColdMonth& month : table.months) {
    table.total.days += month.figures.days;
    add_share(table.total, month.figures, 1.0);
  }
  if (table.total.days > 0) table.total.mean_c = sum_c_ / (24.0 * table.total.days);
  table.missing_days = table.window.last - table.window.first + 1 - table.total.days;
  return table;
}

ColdTable cold_table(const Winter& winter, DayWindow window, const PotThermal& pot,
                     Exposure exposure) {
  ColdLedger ledger{window, pot, exposure};
  const std::vector<double> air = hourly_temperatures(winter);
  for (std::size_t d = 0; d < winter.days.size(); ++d) {
    const Day day = winter.first + static_cast<int>(d);
    if (day < window.first - pot_lead_days || day > window.last) continue;
    DayHours hours{};
    std::copy_n(air.begin() + static_cast<std::ptrdiff_t>(24 * d), 24, hours.begin());
    ledger.add(day, hours, winter.days[d].measured, winter.days[d].anomaly_sd_k);
  }
  ColdTable table = ledger.table();
  table.name = winter.name;
  return table;
}

}  // namespace bulbwright
