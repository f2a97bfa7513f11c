#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "base/calendar_day.hpp"

namespace bulbwright {

/// Days that the pot runs before a window, so that it starts in step with the weather.
inline constexpr int pot_lead_days = 14;

/// A day of every year.
struct MonthDay {
  unsigned month = 1;
  unsigned day = 1;
  bool operator==(const MonthDay&) const = default;
};
/// "11-01": a real day of a year without 29 February. @throws InvalidValue.
MonthDay parse_month_day(std::string_view text);
/// "11-01".
std::string to_iso(MonthDay day);

/// Which days a table covers: the given days, or the same days of every year.
struct ColdPeriod {
  std::optional<DayWindow> exact;
  MonthDay from{10, 1};
  MonthDay to{3, 31};

  /// The window of every year that starts in `year`.
  [[nodiscard]] DayWindow starting_in(int year) const;
  /// The window that `day` lies in, or up to pot_lead_days before.
  [[nodiscard]] std::optional<DayWindow> around(Day day) const;
};
/// October to March, April to September in the south.
ColdPeriod half_year(Hemisphere hemisphere);

}  // namespace bulbwright
