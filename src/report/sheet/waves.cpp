#include <algorithm>

#include <fmt/core.h>

#include "report/sheet/parts.hpp"
#include "report/sheet/words.hpp"
#include "report/text_units.hpp"
#include "report/week_axis.hpp"

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
WeekAxis axis_of(const std::vector<PlannedWave>& waves, int available) {
  Day first = waves.front().first, last = waves.front().last;
  Day from = first, to = last;
  for (const PlannedWave& wave : waves) {
    first = std::min(first, wave.first);
    last = std::max(last, wave.last);
    from = std::min({from, wave.first, wave.earliest_first});
    to = std::max({to, wave.last, wave.latest_last});
  }
  return week_axis(std::max(from, first - widest_range), std::min(to, last + widest_range),
                   available);
}

std::string wave_bar(const PlannedWave& wave, const WeekAxis& axis, const Marks& marks) {
  Cells cells = empty_row(axis);
  fill(cells, axis, wave.earliest_first, wave.latest_last, marks.range);
  fill(cells, axis, wave.first, wave.last, marks.flower);
  fill(cells, axis, wave.peak, wave.peak, marks.peak);
  return row_text(cells);
}

std::string gap_bar(const Display& display, const WeekAxis& axis, const Marks& marks) {
  Cells cells = empty_row(axis);
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
  const WeekAxis axis = axis_of(waves, layout.width - names - dates_columns - 2);
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
