#include "cold/cold_period.hpp"

#include <charconv>

#include <fmt/core.h>

#include "base/error.hpp"

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

}  // namespace bulbwright
