#include "cold/cold_table.hpp"

#include <algorithm>

namespace bulbwright {
namespace {

constexpr double complete_share = 0.95;

constexpr double ColdFigures::*const measures[] = {
    &ColdFigures::mean_c, &ColdFigures::hours_0_7, &ColdFigures::utah_units,
    &ColdFigures::chill_portions, &ColdFigures::cold_weeks};

}  // namespace

void add_share(ColdFigures& sum, const ColdFigures& figures, double share) {
  for (const auto measure : measures) sum.*measure += figures.*measure * share;
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
    add_share(mean.total, table.total, share);
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
      add_share(month.figures, *figures, 1.0 / static_cast<double>(same.size()));
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
