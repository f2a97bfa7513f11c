#include <charconv>

#include <fmt/core.h>

#include "cold/cold_table.hpp"

namespace bulbwright {
namespace {

constexpr int common_year = 2027;  // any year without a 29 February

}  // namespace

MonthDay parse_month_day(std::string_view text) {
  const auto part = [&](std::size_t at) {
    unsigned value = 0;
    const auto [end, fault] = std::from_chars(text.data() + at, text.data() + at + 2, value);
    return fault == std::errc{} && end == text.data() + at + 2 ? value : 0U;
  };
  if (text.size() == 5 && text[2] == '-') {
    const MonthDay day{part(0), part(3)};
    if (is_date(common_year, day.month, day.day)) return day;
  }
  throw InvalidValue{"",
                     fmt::format("{} is no day; expected a date such as \"2026-11-01\", or a day "
                                 "of every year such as \"11-01\"",
                                 in_quotes(text))};
}

std::string to_iso(MonthDay day) {
  return fmt::format("{:02}-{:02}", day.month, day.day);
}

DayWindow ColdPeriod::starting_in(int year) const {
  const Day first{year, from.month, from.day};
  Day last{year, to.month, to.day};
  if (last < first) last = Day{year + 1, to.month, to.day};
  return {first, last};
}

std::optional<DayWindow> ColdPeriod::around(Day day) const {
  const auto holds = [&](const DayWindow& window) {
    return day >= window.first - pot_lead_days && day <= window.last;
  };
  if (exact) return holds(*exact) ? exact : std::nullopt;
  // The earlier of two overlapping windows goes first, so that it is finished before the next.
  for (int year = day.year() - 1; year <= day.year() + 1; ++year) {
    const DayWindow window = starting_in(year);
    if (holds(window)) return window;
  }
  return std::nullopt;
}

ColdPeriod half_year(Hemisphere hemisphere) {
  if (hemisphere == Hemisphere::north) return {{}, {10, 1}, {3, 31}};
  return {{}, {4, 1}, {9, 30}};
}

ColdSurvey::ColdSurvey(ColdPeriod period, double latitude, const PotThermal& pot, Exposure exposure,
                       std::function<DayExtremes(Day)> expected)
    : period_{period},
      latitude_{latitude},
      pot_{pot},
      exposure_{exposure},
      expected_{period.exact ? std::move(expected) : nullptr} {
  if (expected_) {
    window_ = *period_.exact;
    ledger_.emplace(window_, pot_, exposure_);
  }
}

void ColdSurvey::add(const RecordedDay& day) {
  if (expected_) {
    if (day.day < window_.first - pot_lead_days || day.day > window_.last) return;
    Day next = held_ ? held_->day + 1 : window_.first - pot_lead_days;
    for (; next < day.day; ++next) take({next, expected_(next), {}});
  }
  take(day);
}

void ColdSurvey::take(const RecordedDay& day) {
  if (held_) give(&day);
  held_ = day;
}

/// Hands the held day to its table, its hours shaped by its neighbours. The record is cut to the
/// window: its first and its last day continue by themselves.
void ColdSurvey::give(const RecordedDay* next) {
  const RecordedDay today = *held_;
  const auto window = period_.around(today.day);
  if (ledger_ && (!window || window->first != window_.first)) close();
  if (window) {
    if (!ledger_) {
      window_ = *window;
      ledger_.emplace(window_, pot_, exposure_);
    }
    const bool joined_before =
        before_ && before_->day + 1 == today.day && today.day != window_.first;
    const bool joined_after = next != nullptr && today.day + 1 == next->day &&
                              today.day != window_.last && today.day + 1 != window_.first;
    const DayHours hours =
        today.hours ? *today.hours
                    : hourly_temperatures(latitude_, today.day.day_of_year(),
                                          joined_before ? before_->air : today.air, today.air,
                                          joined_after ? next->air : today.air);
    ledger_->add(today.day, hours, today.air.measured, today.air.anomaly_sd_k);
  }
  before_ = today;
}

void ColdSurvey::close() {
  ColdTable table = ledger_->table();
  ledger_.reset();
  if (table.measured_days > 0 || table.expected_days > 0) tables_.push_back(std::move(table));
}

std::vector<ColdTable> ColdSurvey::finish() {
  if (expected_) {
    Day next = held_ ? held_->day + 1 : window_.first - pot_lead_days;
    for (; next <= window_.last; ++next) take({next, expected_(next), {}});
  }
  if (held_) give(nullptr);
  if (ledger_) close();
  return std::move(tables_);
}

}  // namespace bulbwright
