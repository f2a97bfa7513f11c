#include "report/week_axis.hpp"

#include <algorithm>

#include <fmt/core.h>

#include "report/text_layout.hpp"
#include "report/text_units.hpp"

namespace bulbwright::report {
namespace {

/// Writes `text` from column `at` on if it fits and no text stands there.
void write(std::string& row, int at, const std::string& text) {
  const auto from = static_cast<std::size_t>(at);
  if (from + text.size() > row.size()) return;
  for (std::size_t i = from == 0 ? 0 : from - 1; i < from + text.size(); ++i) {
    if (row[i] != ' ') return;
  }
  row.replace(from, text.size(), text);
}

}  // namespace

int WeekAxis::at(Day day) const {
  return std::clamp((day - start) * per_week / 7, 0, size() - 1);
}

WeekAxis week_axis(Day from, Day to, int available) {
  WeekAxis axis;
  axis.start = from - from.days_since_monday();
  axis.weeks = (to - axis.start) / 7 + 1;
  axis.per_week = std::clamp(available / axis.weeks, 1, 4);
  return axis;
}

std::string row_text(const Cells& cells) {
  std::string text;
  for (const std::string& cell : cells) text += cell;
  return text;
}

Cells empty_row(const WeekAxis& axis) {
  return Cells(static_cast<std::size_t>(axis.size()), " ");
}

void fill(Cells& cells, const WeekAxis& axis, Day from, Day to, const char* mark) {
  for (int i = axis.at(from); i <= axis.at(to); ++i) cells[static_cast<std::size_t>(i)] = mark;
}

std::string month_row(const WeekAxis& axis) {
  std::string row(static_cast<std::size_t>(axis.size()), ' ');
  const Day end = axis.start + axis.weeks * 7 - 1;
  for (Day day = axis.start; day <= end; ++day) {
    if (day.day() == 1) write(row, axis.at(day), month_text(day));
  }
  write(row, 0, month_text(axis.start));
  return row;
}

std::string monday_row(const WeekAxis& axis) {
  std::string row;
  for (int week = 0; week < axis.weeks; ++week) {
    row += pad_right(fmt::format("{}", (axis.start + week * 7).day()), axis.per_week);
  }
  return row;
}

}  // namespace bulbwright::report
