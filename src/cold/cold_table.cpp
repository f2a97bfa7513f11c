#include "cold/cold_table.hpp"

#include <algorithm>

namespace bulbwright {
namespace {

constexpr double complete_share = 0.95;

constexpr double ColdFigures::*const measures[] = {
    &ColdFigures::mean_c, &ColdFigures::hours_0_7, &ColdFigures::utah_units,
    &ColdFigures::chill_portions, &ColdFigures::cold_weeks};

void add_means(ColdFigures& sum, const ColdFigures& figures, double share) {
  for (const auto measure : measures) sum.*measure += figures.*measure * share;
}

}  // namespace

ColdLedger::ColdLedger(DayWindow window, const PotThermal& pot, Exposure exposure)
    : pot_{pot, exposure} {
  table_.window = window;
}

void ColdLedger::close_month() {
  if (table_.months.empty()) return;
  ColdFigures& figures = table_.months.back().figures;
  if (figures.days > 0) figures.mean_c = month_sum_c_ / (24.0 * figures.days);
  figures.cold_weeks = cold_.weeks().value() - weeks_before_month_;
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
    month.hours_0_7 += is_chill_hour(t_c) ? 1.0 : 0.0;
    month.utah_units += utah_unit(t_c);
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
    add_means(table.total, month.figures, 1.0);
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

bool is_complete(const ColdTable& table) {
  return table.total.days >= complete_share * (table.window.last - table.window.first + 1);
}

ColdTable mean_of(std::span<const ColdTable> tables) {
  ColdTable mean;
  if (tables.empty()) return mean;
  mean.name = "mean";
  mean.window = tables.front().window;
  const double share = 1.0 / static_cast<double>(tables.size());
  for (const ColdTable& table : tables) {
    add_means(mean.total, table.total, share);
    mean.total.days = std::max(mean.total.days, table.total.days);
    mean.measured_days += table.measured_days;
    mean.expected_days += table.expected_days;
    mean.missing_days += table.missing_days;
  }
  for (const ColdMonth& pattern : tables.front().months) {
    ColdMonth month{pattern.year, pattern.month, {}};
    std::vector<const ColdFigures*> same;
    for (const ColdTable& table : tables) {
      for (const ColdMonth& other : table.months) {
        if (other.month == month.month) same.push_back(&other.figures);
      }
    }
    for (const ColdFigures* figures : same) {
      add_means(month.figures, *figures, 1.0 / static_cast<double>(same.size()));
      month.figures.days = std::max(month.figures.days, figures->days);
    }
    mean.months.push_back(month);
  }
  return mean;
}

double quantile(std::vector<double> values, double share) {
  if (values.empty()) return 0.0;
  std::sort(values.begin(), values.end());
  const double at = share * static_cast<double>(values.size() - 1);
  const auto below = static_cast<std::size_t>(at);
  const std::size_t above = std::min(below + 1, values.size() - 1);
  return values[below] + (at - static_cast<double>(below)) * (values[above] - values[below]);
}

ColdFigures quantile_of(std::span<const ColdTable> tables, double share) {
  ColdFigures result;
  for (const auto measure : measures) {
    std::vector<double> values;
    for (const ColdTable& table : tables) {
      if (is_complete(table)) values.push_back(table.total.*measure);
    }
    result.*measure = quantile(std::move(values), share);
  }
  return result;
}

}  // namespace bulbwright
