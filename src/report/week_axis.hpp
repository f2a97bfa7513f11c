#pragma once

#include <string>
#include <vector>

#include "base/calendar_day.hpp"

namespace bulbwright::report {

/// The calendar along a line of text, for bars by week.

/// Days to columns: week by week from a Monday, `per_week` columns each.
struct WeekAxis {
  Day start;
  int weeks = 1;
  int per_week = 3;
  [[nodiscard]] int size() const { return weeks * per_week; }
  /// Column of a day, the first or the last for one outside.
  [[nodiscard]] int at(Day day) const;
};

/// From the week of `from` to that of `to`, one to four columns a week in `available` ones.
WeekAxis week_axis(Day from, Day to, int available);

/// One row of cells, each a character that may be several bytes long.
using Cells = std::vector<std::string>;
Cells empty_row(const WeekAxis& axis);
void fill(Cells& cells, const WeekAxis& axis, Day from, Day to, const char* mark);
std::string row_text(const Cells& cells);

/// Month names where months begin; the first also at the left edge where there is room.
std::string month_row(const WeekAxis& axis);

/// The day of the month of each Monday.
std::string monday_row(const WeekAxis& axis);

}  // namespace bulbwright::report
