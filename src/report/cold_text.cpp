#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/core.h>

#include "cold/pot_temperature.hpp"
#include "report/cold_report.hpp"
#include "report/cold_words.hpp"
#include "report/notice_text.hpp"
#include "report/sheet/words.hpp"
#include "report/station_text.hpp"
#include "report/text_layout.hpp"
#include "report/text_units.hpp"

namespace bulbwright::report {
namespace {

constexpr int label_columns = 10;
constexpr int narrow_columns = 60;
constexpr int rain_columns = 9;

std::string month_label(const ColdReport& report, const ColdMonth& month) {
  const std::string_view name = month_name(month.month);
  return is_of_every_year(report.period) ? std::string{name}
                                         : fmt::format("{} {}", name, month.year);
}

std::string day_words(MonthDay day) {
  return fmt::format("{} {}", day.day, month_name(day.month));
}

std::string period_words(const ColdPeriod& period) {
  if (period.exact)
    return fmt::format("{} to {}", to_words(period.exact->first), to_words(period.exact->last));
  return fmt::format("{} to {}, any year", day_words(period.from), day_words(period.to));
}

std::string weeks(double value) {
  return fmt::format("{:.1f}", rounded(value, 0.1));
}

/// Columns of the hours within 0 to 7.2 degC.
int hours_columns(const TextStyle& style) {
  return style.units == Units::inches ? 10 : 8;
}

/// The air's figures in a row: mean, hours, Utah units, portions.
std::string air_columns(const ColdFigures& air, const TextStyle& style) {
  const double mean = style.units == Units::inches ? air.mean_c * 1.8 + 32.0 : air.mean_c;
  return fmt::format("{:>8.1f}{:>{}.0f}{:>8.0f}{:>10.1f}", rounded(mean, 0.1),
                     rounded(air.hours_0_7, 1.0), hours_columns(style),
                     rounded(air.utah_units, 1.0), rounded(air.chill_portions, 0.1));
}

std::string air_heading(const TextStyle& style) {
  return pad_left(style.units == Units::inches ? "°F" : "°C", 8) +
         pad_left(style.units == Units::inches ? "32-45 °F" : "0-7 °C", hours_columns(style)) +
         pad_left("Utah", 8) + pad_left("portions", 10);
}

/// Bar of weeks: full up to the poorest, half to the normal, faint to the richest.
std::string bar(double poorest, double normal, double richest, double scale, int room,
                const TextStyle& style) {
  const auto at = [&](double value) {
    return static_cast<int>(std::lround(rounded(std::max(0.0, value) / scale * room, 0.01)));
  };
  const std::array<const char*, 3> marks = style.utf8 ? std::array<const char*, 3>{"█", "▒", "░"}
                                                      : std::array<const char*, 3>{"#", "=", "."};
  std::string text;
  for (int i = 0; i < at(richest); ++i) text += marks[i < at(poorest) ? 0 : i < at(normal) ? 1 : 2];
  return text;
}

struct Bar {
  std::string label;
  double poorest, normal, richest;
};

Lines chart(const std::vector<Bar>& bars, const char* title, int width, const TextStyle& style) {
  double most = 1.0;
  int label = 4;
  for (const Bar& b : bars) {
    most = std::max({most, b.normal, b.richest});
    label = std::max(label, columns(b.label));
  }
  const int room = std::max(10, std::min(width, 80) - label - 8);
  Lines lines = wrap(title, width);
  for (const Bar& b : bars) {
    lines.push_back(fmt::format("{}  {} {}", pad_right(b.label, label),
                                bar(b.poorest, b.normal, b.richest, most, room, style),
                                weeks(b.normal)));
  }
  return lines;
}

/// The mean rain of a month in a column of its own; nothing where none is known.
std::string rain_column(const ColdReport& report, unsigned month, const TextStyle& style) {
  if (!report.account.rain_mm) return "";
  return pad_left(rain_text((*report.account.rain_mm)[month - 1], style), rain_columns);
}

std::string rain_heading(const ColdReport& report) {
  return report.account.rain_mm ? pad_left("rain", rain_columns) : "";
}

Lines three_table(const ColdReport& report, const TextStyle& style, int width) {
  const auto& w = report.winters;
  const bool with_air = width >= narrow_columns;
  const bool with_rain = width >= narrow_columns + rain_columns + 8;
  const auto row = [&](const std::string& label, const ColdFigures& normal, const ColdFigures& mild,
                       const ColdFigures& cold) {
    return fmt::format("{}{:>8}{:>8}{:>8}{}", pad_right(label, label_columns),
                       weeks(normal.cold_weeks), weeks(mild.cold_weeks), weeks(cold.cold_weeks),
                       with_air ? air_columns(normal, style) : "");
  };
  Lines lines;
  lines.push_back(
      fmt::format("{}{}{}", pad_right("", label_columns), pad_left("cold weeks in the pot", 24),
                  with_air ? pad_left("air, normal winter", 26 + hours_columns(style)) : ""));
  lines.push_back(fmt::format("{}{:>8}{:>8}{:>8}{}{}", pad_right("", label_columns), "normal",
                              "mild", "cold", with_air ? air_heading(style) : "",
                              with_rain ? rain_heading(report) : ""));
  for (std::size_t m = 0; m < w[0].months.size(); ++m) {
    lines.push_back(row(month_label(report, w[0].months[m]), w[0].months[m].figures,
                        w[1].months[m].figures, w[2].months[m].figures));
    if (with_rain) lines.back() += rain_column(report, w[0].months[m].month, style);
  }
  lines.push_back(bold(row("Total", w[0].total, w[1].total, w[2].total), style));
  return lines;
}

std::string single_row(const std::string& label, const ColdFigures& figures, int label_width,
                       const TextStyle& style) {
  return fmt::format("{}{:>10}{}", pad_right(label, label_width), weeks(figures.cold_weeks),
                     air_columns(figures, style));
}

Lines single_heading(int label_width, const TextStyle& style) {
  return {fmt::format("{}{:>10}{}", pad_right("", label_width), "cold weeks", air_heading(style))};
}

Lines month_table(const ColdReport& report, const ColdTable& table, const TextStyle& style) {
  Lines lines = single_heading(label_columns, style);
  lines.back() += rain_heading(report);
  for (const ColdMonth& month : table.months) {
    lines.push_back(single_row(month_label(report, month), month.figures, label_columns, style) +
                    rain_column(report, month.month, style));
  }
  lines.push_back(bold(single_row("Total", table.total, label_columns, style), style));
  return lines;
}

Lines winter_table(const ColdReport& report, const TextStyle& style) {
  constexpr int label_width = 14;
  Lines lines = single_heading(label_width, style);
  for (const ColdTable& table : report.winters) {
    std::string row = single_row(table.name, table.total, label_width, style);
    if (!is_complete(table)) row += fmt::format("  {} days missing", table.missing_days);
    lines.push_back(row);
  }
  lines.push_back(single_row("1 year in 10", report.low, label_width, style) + "  or less");
  lines.push_back(single_row("half the years", report.middle, label_width, style) + "  or less");
  lines.push_back(single_row("9 years in 10", report.high, label_width, style) + "  or less");
  return lines;
}

Lines three_chart(const ColdReport& report, const TextStyle& style, int width) {
  const auto& w = report.winters;
  std::vector<Bar> bars;
  for (std::size_t m = 0; m < w[0].months.size(); ++m) {
    const std::array<double, 3> values{w[0].months[m].figures.cold_weeks,
                                       w[1].months[m].figures.cold_weeks,
                                       w[2].months[m].figures.cold_weeks};
    const auto [low, high] = std::minmax_element(values.begin(), values.end());
    bars.push_back({month_label(report, w[0].months[m]), *low, values[0], *high});
  }
  return chart(bars,
               style.utf8 ? "Cold weeks: █ in every winter, to ▒ in a normal one, to ░ at best"
                          : "Cold weeks: # in every winter, to = in a normal one, to . at best",
               width, style);
}

Lines record_chart(const ColdReport& report, const TextStyle& style, int width) {
  std::vector<Bar> bars;
  if (report.kind == ColdReport::Kind::yearly) {
    for (const ColdTable& table : report.winters) {
      bars.push_back(
          {table.name, table.total.cold_weeks, table.total.cold_weeks, table.total.cold_weeks});
    }
    return chart(bars, "Cold weeks of each winter", width, style);
  }
  for (const ColdMonth& month : report.winters.front().months) {
    const double value = month.figures.cold_weeks;
    bars.push_back({month_label(report, month), value, value, value});
  }
  return chart(bars, "Cold weeks by month", width, style);
}

Lines heading(const ColdReport& report, const TextStyle& style, int width) {
  const std::string where =
      report.latitude ? fmt::format(" ({:.1f}° {})", std::abs(rounded(*report.latitude, 0.1)),
                                    *report.latitude < 0 ? "S" : "N")
                      : "";
  Lines lines;
  append(lines, wrap(fmt::format("Cold at {}{}, {}", printable(cold_place(report)), where,
                                 period_words(report.period)),
                     width));
  lines.front() = bold(lines.front(), style);
  append(lines, wrap(fmt::format("From {}.", printable(cold_basis(report, style))), width));
  append(
      lines,
      wrap(fmt::format("In {}, {}: the mix lags {:.0f} hours and keeps {:.0f} % of the air's daily "
                       "swing.",
                       printable(cold_pot(report, style)), word_of(report.exposure),
                       rounded(report.lag_hours, 1.0), rounded(100 * report.swing_left, 1.0)),
           width));
  if (const std::string rain = cold_rain(report, style); !rain.empty())
    append(lines, wrap(sentence(rain), width));
  return lines;
}

}  // namespace

std::string cold_text(const ColdReport& report, const TextStyle& style) {
  const int width = text_width(style);
  Lines lines = heading(report, style, width);
  lines.emplace_back();
  if (report.kind == ColdReport::Kind::three) {
    append(lines, three_table(report, style, width));
    lines.emplace_back();
    append(lines, three_chart(report, style, width));
  } else {
    if (report.kind == ColdReport::Kind::yearly) {
      append(lines, winter_table(report, style));
      lines.emplace_back();
      lines.emplace_back("Mean of the whole winters by month");
    }
    append(lines, month_table(report,
                              report.kind == ColdReport::Kind::yearly ? report.mean
                                                                      : report.winters.front(),
                              style));
    lines.emplace_back();
    append(lines, record_chart(report, style, width));
  }
  if (!report.notices.empty()) lines.emplace_back();
  for (const Notice& notice : report.notices) {
    append(lines, hanging("-", sentence(printable(notice_text(notice, style))), 2, width));
  }
  const PlaceAccount& account = report.account;
  if (!account.blended_from.empty()) {
    const std::string stations =
        stations_text(account.blended_from, account.farther_stations, style);
    append(lines, hanging("-", fmt::format("Stations: {}.", stations), 2, width));
  }
  for (std::string& line : lines) line = in_style(line, style);
  return joined(lines);
}

}  // namespace bulbwright::report
