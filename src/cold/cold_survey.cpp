#include "cold/cold_survey.hpp"

namespace bulbwright {

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
