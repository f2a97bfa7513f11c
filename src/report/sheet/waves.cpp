#include <algorithm>

#include <fmt/core.h>

#include "report/sheet/parts.hpp"
#include "report/sheet/words.hpp"
#include "report/text_units.hpp"

namespace bulbwright::report {
namespace {

constexpr int longest_name = 26;
/// "28 Dec to 3 Jan ?"
constexpr int dates_columns = 17;
/// Days drawn before the first and after the last expected flower.
constexpr int widest_range = 35;

struct Marks {
  const char* flower;
  const char* peak;
  const char* range;
  const char* none;
};

Marks marks_of(const TextStyle& style) {
  return style.utf8 ? Marks{"█", "◆", "░", "×"} : Marks{"=", "#", ".", "x"};
}

/// Days to columns: week by week from a Monday, `per_week` columns each.
struct Axis {
  Day start;
  int weeks = 1;
  int per_week = 3;
  [[nodiscard]] int size() const { return weeks * per_week; }
  [[nodiscard]] int at(Day day) const {
    return std::clamp((day - start) * per_week / 7, 0, size() - 1);
  }
};

bool is_guess(const PlannedWave& wave) {
  return !wave.confident || !wave.observed;
}

/// The kind, and its layer where another has the same kind.
std::string row_name(const PlannedWave& wave, const Plan& plan, const TextStyle& style) {
  const std::string name = plain_name(in_style(wave.name, style));
  const auto same = std::count_if(plan.waves.begin(), plan.waves.end(),
                                  [&](const auto& other) { return other.taxon == wave.taxon; });
  if (same < 2) return name;
  return layer_word(wave.layer, plan.layers.size()) + ": " + name;
}

/// The weeks from the earliest to the latest flower, but no further from the expected ones than
/// `widest_range`: an unsure wave would squeeze the rest.
Axis axis_of(const std::vector<PlannedWave>& waves, int available) {
  Day first = waves.front().first, last = waves.front().last;
  Day from = first, to = last;
  for (const PlannedWave& wave : waves) {
    first = std::min(first, wave.first);
    last = std::max(last, wave.last);
    from = std::min({from, wave.first, wave.earliest_first});
    to = std::max({to, wave.last, wave.latest_last});
  }
  from = std::max(from, first - widest_range);
  to = std::min(to, last + widest_range);
  Axis axis;
  axis.start = from - from.days_since_monday();
  axis.weeks = (to - axis.start) / 7 + 1;
  axis.per_week = std::clamp(available / axis.weeks, 1, 4);
  return axis;
}

/// One row of cells, each a character that may be several bytes long.
std::string row_text(const std::vector<std::string>& cells) {
  std::string text;
  for (const std::string& cell : cells) text += cell;
  return text;
}

std::vector<std::string> empty_row(const Axis& axis) {
  return std::vector<std::string>(static_cast<std::size_t>(axis.size()), " ");
}

void fill(std::vector<std::string>& cells, const Axis& axis, Day from, Day to, const char* mark) {
  for (int i = axis.at(from); i <= axis.at(to); ++i) cells[static_cast<std::size_t>(i)] = mark;
}

std::string wave_bar(const PlannedWave& wave, const Axis& axis, const Marks& marks) {
  std::vector<std::string> cells = empty_row(axis);
  fill(cells, axis, wave.earliest_first, wave.latest_last, marks.range);
  fill(cells, axis, wave.first, wave.last, marks.flower);
  fill(cells, axis, wave.peak, wave.peak, marks.peak);
  return row_text(cells);
}

/// Writes `text` from column `at` on if it fits and no text stands there.
void write(std::string& row, int at, const std::string& text) {
  const auto from = static_cast<std::size_t>(at);
  if (from + text.size() > row.size()) return;
  for (std::size_t i = from == 0 ? 0 : from - 1; i < from + text.size(); ++i) {
    if (row[i] != ' ') return;
  }
  row.replace(from, text.size(), text);
}

/// Month names where months begin; the first also at the left edge where there is room.
std::string month_row(const Axis& axis) {
  std::string row(static_cast<std::size_t>(axis.size()), ' ');
  const Day end = axis.start + axis.weeks * 7 - 1;
  for (Day day = axis.start; day <= end; ++day) {
    if (day.day() == 1) write(row, axis.at(day), month_text(day));
  }
  write(row, 0, month_text(axis.start));
  return row;
}

/// The day of the month of each Monday.
std::string monday_row(const Axis& axis) {
  std::string row;
  for (int week = 0; week < axis.weeks; ++week) {
    row += pad_right(fmt::format("{}", (axis.start + week * 7).day()), axis.per_week);
  }
  return row;
}

std::string gap_bar(const Display& display, const Axis& axis, const Marks& marks) {
  std::vector<std::string> cells = empty_row(axis);
  for (const DayGap& gap : display.gaps) fill(cells, axis, gap.from, gap.to, marks.none);
  return row_text(cells);
}

}  // namespace

Lines bloom_lines(const Plan& plan, const SheetLayout& layout) {
  if (plan.waves.empty()) return {};
  const TextStyle& style = layout.style;
  const Marks marks = marks_of(style);
  std::vector<PlannedWave> waves;
  Lines without;
  for (const PlannedWave& wave : plan.waves) {
    if (wave.flowers) {
      waves.push_back(wave);
    } else {
      append(without, wrap(fmt::format("{}: no flowers to be expected this season.",
                                       plain_name(in_style(wave.name, style))),
                           layout.width));
    }
  }
  if (waves.empty()) return without;
  std::stable_sort(waves.begin(), waves.end(),
                   [](const PlannedWave& a, const PlannedWave& b) { return a.first < b.first; });
  int names = 12;
  for (const PlannedWave& wave : waves) {
    names = std::max(names, columns(row_name(wave, plan, style)));
  }
  names = std::min({names, longest_name, layout.width / 3});
  const Axis axis = axis_of(waves, layout.width - names - dates_columns - 2);
  const bool with_dates = names + axis.size() + dates_columns + 2 <= layout.width;
  const bool unsure = std::any_of(waves.begin(), waves.end(),
                                  [](const PlannedWave& wave) { return is_guess(wave); });
  Lines lines;
  const std::string legend = fmt::format(
      "In flower, by week ({} open, {} peak, {} in four of five years{}):", marks.flower,
      marks.peak, marks.range, unsure ? "; ? a guess" : "");
  for (const std::string& line : wrap(legend, layout.width)) lines.push_back(bold(line, style));
  const auto row = [&](const std::string& name, const std::string& bar, const std::string& after) {
    lines.push_back(pad_right(cut_to(name, names, style), names) + " " + bar + " " + after);
  };
  row("", month_row(axis), "");
  if (axis.per_week >= 3 && layout.closeness < 4) row("Mondays", monday_row(axis), "");
  for (const PlannedWave& wave : waves) {
    row(row_name(wave, plan, style), wave_bar(wave, axis, marks),
        (with_dates ? days_text(wave.first, wave.last, false) : "") + (is_guess(wave) ? " ?" : ""));
  }
  if (!plan.display.gaps.empty() && layout.closeness < 6) {
    row("nothing open", gap_bar(plan.display, axis, marks), "");
  }
  append(lines, without);
  return lines;
}

}  // namespace bulbwright::report
