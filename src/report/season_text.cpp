// season_text(): many pots on one page.
#include <algorithm>

#include <fmt/format.h>

#include "report/season_report.hpp"
#include "report/season_words.hpp"
#include "report/sheet/words.hpp"
#include "report/shop_report.hpp"
#include "report/text_layout.hpp"
#include "report/text_units.hpp"
#include "report/week_axis.hpp"

namespace bulbwright::report {
namespace {

/// "Fri 13 Nov to 15 Jan  "
constexpr int day_columns = 18;
/// More pots than this have no bar of their own.
constexpr std::size_t most_bars = 24;
constexpr int longest_bar_name = 22;

struct Page {
  const Season& season;
  const TextStyle& style;
  int width = 80;
  Lines lines{};

  void head(const std::string& text) {
    if (!lines.empty()) lines.emplace_back();
    for (const std::string& line : wrap(text, width)) lines.push_back(bold(line, style));
  }
  void text(const std::string& words) { append(lines, wrap(words, width)); }
};

std::string day_and_weekday(Day day) {
  return fmt::format("{} {}", to_words(day, true).substr(0, 3), day_text(day, false));
}

/// "about 45 min", "about 2.5 h".
std::string work_text(double hours) {
  if (hours >= 1.75) return fmt::format("about {} h", short_number(rounded(hours, 0.5)));
  return fmt::format("about {:.0f} min", std::max(5.0, rounded(hours * 60.0, 5.0)));
}

std::string flowers_text(const Flowers& flowers) {
  if (!flowers.display.first) return "No flowers are to be expected.";
  std::string text =
      fmt::format("In flower on {}, {}", counted(flowers.display.days_in_flower, "day", "days"),
                  days_text(*flowers.display.first, *flowers.display.last, true));
  std::vector<std::string> gaps;
  for (const DayGap& gap : flowers.display.gaps) {
    gaps.push_back(fmt::format("{} (chance {} in 100)", days_text(gap.from, gap.to, false),
                               static_cast<int>(rounded(gap.chance * 100.0, 1.0))));
  }
  if (!gaps.empty()) text += "; nothing open " + listed(gaps);
  return text + ".";
}

/// "spring 2027" where that is so for all pots that are planted.
std::string spring_text(const Season& season) {
  std::string spring;
  for (const SeasonPot& pot : season.pots) {
    if (!pot.ok()) continue;
    const std::string of_pot = season_text(pot.plan->season, pot.plan->place.hemisphere);
    if (!spring.empty() && of_pot != spring) return "";
    spring = of_pot;
  }
  return spring;
}

void add_heading(Page& page) {
  const Season& season = page.season;
  const std::string spring = spring_text(season);
  page.lines.push_back(bold(
      fmt::format(
          "{}{}: {} in {} of mix", counted(static_cast<int>(season.pots.size()), "pot", "pots"),
          spring.empty() ? "" : ", " + spring, counted(season.filling.bulbs, "bulb", "bulbs"),
          litres_text(season.filling.mix_loose, page.style)),
      page.style));
  page.text(flowers_text(season.flowers));
  for (const SeasonPot& pot : season.pots) {
    if (pot.ok()) continue;
    append(page.lines,
           wrap(fmt::format("Left out: {}. {}", in_style(printable(pot.name), page.style),
                            sentence(why_not(pot, page.style))),
                page.width));
  }
}

std::string job_days(const SharedJob& job) {
  if (!job.until || *job.until == job.date) return day_and_weekday(job.date);
  return days_text(job.date, *job.until, false);
}

void add_job(Page& page, const std::string& label, const SharedJob& job) {
  append(page.lines,
         hanging(label, job_text(page.season, job, page.style), day_columns, page.width));
}

void add_days(Page& page) {
  int year = 0;
  for (const JobDay& day : page.season.days) {
    if (day.date.year() != year) {
      year = day.date.year();
      page.head(fmt::format("Jobs in {}", year));
    }
    std::string said;
    for (const SharedJob& job : day.jobs) {
      const std::string days = job_days(job);
      add_job(page, days == said ? "" : days, job);
      said = days;
    }
  }
}

void add_weeks(Page& page) {
  int year = 0;
  for (const JobWeek& week : page.season.weeks) {
    if (week.start.year() != year) {
      year = week.start.year();
      page.head(fmt::format("Jobs by week, from Mondays in {}", year));
    }
    const std::string label = day_text(week.start, false);
    bool first = true;
    for (const SharedJob& job : week.begin) {
      const std::string until =
          job.until && *job.until != job.date ? " to " + day_text(*job.until, false) : "";
      const std::string text = fmt::format("{}{}: {}", day_and_weekday(job.date), until,
                                           job_text(page.season, job, page.style));
      append(page.lines, hanging(first ? label : "", text, 8, page.width));
      first = false;
    }
    std::vector<std::string> on;
    for (const SharedJob& job : week.go_on) {
      on.push_back(ongoing_text(job, page.style));
    }
    if (on.empty()) continue;
    append(page.lines,
           hanging("", fmt::format("Goes on: {}.", fmt::join(on, "; ")), 8, page.width));
  }
}

void add_refrigerator(Page& page) {
  const Refrigerator& fridge = page.season.refrigerator;
  if (fridge.weeks.empty()) {
    page.head("Refrigerator: nothing goes into it.");
    return;
  }
  const TextStyle& style = page.style;
  const Litres room = fridge.capacity.value_or(fridge.most);
  page.head(fmt::format("Refrigerator, litres of bags on the fullest day of each week{}",
                        fridge.capacity
                            ? fmt::format(" (the drawer holds {})", litres_text(room, style))
                            : std::string{}));
  const char* in = style.utf8 ? "█" : "=";
  const char* over = style.utf8 ? "×" : "x";
  constexpr int label = 9, number = 7;
  const int available = page.width - label - number - 2;
  const double scale = std::max({room.value(), fridge.most.value(), litre_step}) / available;
  for (const FridgeWeek& week : fridge.weeks) {
    const int cells = static_cast<int>(rounded(week.litres.value() / scale, 1.0));
    const int within = std::min(cells, static_cast<int>(rounded(room.value() / scale, 1.0)));
    std::string bar;
    for (int i = 0; i < cells; ++i) bar += i < within ? in : over;
    page.lines.push_back(pad_right(day_text(week.start, false), label) +
                         pad_left(fmt::format("{:.1f}", week.litres.value()), number) + "  " + bar);
  }
  if (!fridge.capacity) return;
  if (fridge.overflow.empty()) {
    page.text("All of it fits.");
    return;
  }
  std::vector<std::string> days;
  for (const FridgeOverflow& overflow : fridge.overflow) {
    days.push_back(fmt::format("{} (up to {})", days_text(overflow.from, overflow.to, false),
                               litres_text(overflow.litres, style)));
  }
  page.text(fmt::format("Too full {}.", listed(days)));
}

void add_advice(Page& page) {
  const RoomAdvice& advice = page.season.refrigerator.advice;
  std::vector<std::string> alone;
  if (advice.later) alone.push_back(change_text(page.season, *advice.later, page.style));
  if (advice.precooled) alone.push_back(change_text(page.season, *advice.precooled, page.style));
  if (!alone.empty()) {
    page.text(fmt::format("Least change that makes it fit: {}.", listed(alone, "or")));
    return;
  }
  if (advice.together.empty()) {
    if (advice.still_lacking > Litres{0.0})
      page.text("No pot that waits and no kind bought precooled makes it fit.");
    return;
  }
  std::vector<std::string> all;
  for (const RoomChange& change : advice.together)
    all.push_back(change_text(page.season, change, page.style));
  const std::string changes = fmt::format("{}", fmt::join(all, "; "));
  if (advice.still_lacking > Litres{0.0}) {
    page.text(fmt::format("Not even all of this makes it fit, {} are still lacking: {}.",
                          litres_text(advice.still_lacking, page.style), changes));
  } else {
    page.text(fmt::format("No change alone makes it fit; together these do: {}.", changes));
  }
}

void add_filling(Page& page) {
  const Filling& filling = page.season.filling;
  if (filling.days.empty()) return;
  const auto& told = page.season.ask.hours_a_day;
  page.head(
      fmt::format("Filling: {}, {} of mix, {} of work{}", counted(filling.pots, "pot", "pots"),
                  litres_text(filling.mix_loose, page.style), work_text(filling.hours),
                  told ? fmt::format(", at most {} h a day", short_number(*told)) : std::string{}));
  for (const FillingDay& day : filling.days) {
    std::string text = fmt::format("{}: {}, {}, {}", pots_text(page.season, day.pots, page.style),
                                   counted(day.bulbs, "bulb", "bulbs"),
                                   litres_text(day.mix_loose, page.style), work_text(day.hours));
    if (day.perlite > Litres{0.0})
      text += fmt::format(" ({} of the mix perlite)", litres_text(day.perlite, page.style));
    if (day.days_late > 0)
      text += fmt::format("; {} late, the bulbs wait in the cold",
                          counted(day.days_late, "day", "days"));
    append(page.lines, hanging(day_and_weekday(day.date), sentence(text), day_columns, page.width));
  }
}

void add_bar(Page& page, const WeekAxis& axis, int names, const std::string& name,
             const std::vector<DayWindow>& open, int days) {
  Cells cells = empty_row(axis);
  for (const DayWindow& wave : open)
    fill(cells, axis, wave.first, wave.last, page.style.utf8 ? "█" : "=");
  page.lines.push_back(pad_right(cut_to(name, names, page.style), names) + " " + row_text(cells) +
                       " " + pad_left(fmt::format("{}", days), 4));
}

std::vector<DayWindow> windows_of(const Flowers& flowers) {
  std::vector<DayWindow> open;
  for (const PottedWave& wave : flowers.waves) open.push_back({wave.wave.first, wave.wave.last});
  return open;
}

void add_flowers(Page& page) {
  const Season& season = page.season;
  if (!season.flowers.display.first) return;
  constexpr int days_columns = 6;
  int names = 12;
  const bool pots = season.flowers.pots.size() <= most_bars;
  if (pots) {
    for (const std::size_t pot : season.flowers.pots)
      names = std::max(names, columns(in_style(printable(season.pots[pot].name), page.style)));
  }
  for (const Flowers& group : season.groups)
    names = std::max(names, columns(in_style(printable(group.group), page.style)));
  names = std::min({names, longest_bar_name, page.width / 3});
  const WeekAxis axis = week_axis(*season.flowers.display.first, *season.flowers.display.last,
                                  page.width - names - days_columns);
  page.head("In flower, by week (last column: days with something open)");
  const auto calendar = [&](const char* label, const std::string& row) {
    page.lines.push_back(pad_right(label, names) + " " + row);
  };
  calendar("", month_row(axis));
  if (axis.per_week >= 3) calendar("Mondays", monday_row(axis));
  if (pots) {
    for (const std::size_t pot : season.flowers.pots) {
      const Plan& plan = *season.pots[pot].plan;
      std::vector<DayWindow> open;
      for (const PlannedWave& wave : plan.waves) {
        if (wave.flowers) open.push_back({wave.first, wave.last});
      }
      add_bar(page, axis, names, in_style(printable(season.pots[pot].name), page.style), open,
              plan.display.days_in_flower);
    }
  }
  for (const Flowers& group : season.groups) {
    add_bar(page, axis, names, in_style(printable(group.group), page.style), windows_of(group),
            group.display.days_in_flower);
  }
  add_bar(page, axis, names, fmt::format("all {} pots", season.flowers.pots.size()),
          windows_of(season.flowers), season.flowers.display.days_in_flower);
  for (const Flowers& group : season.groups) {
    page.text(fmt::format("{}: {}", capitalised(in_style(printable(group.group), page.style)),
                          flowers_text(group)));
  }
}

void add_shopping(Page& page) {
  std::vector<std::string> bulbs, rest;
  for (const ShoppingItem& item : page.season.shopping.items) {
    if (item.buy == 0) continue;
    const std::string name = in_style(shop_item_text(item, page.style), page.style);
    if (item.kind == ItemKind::bulb) {
      bulbs.push_back(fmt::format("{}\u00A0× {}", item.buy, name));
    } else if (item.kind == ItemKind::mesh) {
      rest.push_back(fmt::format("{}\u00A0× {}", item.buy, name));
    } else if (item.unit == "l") {
      rest.push_back(fmt::format(
          "{} of {}", litres_text(Litres{static_cast<double>(item.buy)}, page.style), name));
    } else {
      rest.push_back(fmt::format("{}\u00A0{}", item.buy, name));
    }
  }
  if (bulbs.empty() && rest.empty()) return;
  page.head("To buy, spares included (`shop` has packs, and what goes into which pot)");
  if (!bulbs.empty()) page.text(fmt::format("{}.", fmt::join(bulbs, "; ")));
  if (!rest.empty()) page.text(fmt::format("{}.", fmt::join(rest, "; ")));
}

void add_cautions(Page& page) {
  std::vector<std::pair<CautionSeverity, std::string>> sorted;
  for (const Caution& caution : page.season.cautions) {
    if (!caution.short_text.empty())
      sorted.emplace_back(caution.severity,
                          sentence(in_style(caution_line(caution, page.style), page.style)));
  }
  if (sorted.empty()) return;
  std::stable_sort(sorted.begin(), sorted.end(),
                   [](const auto& a, const auto& b) { return a.first < b.first; });
  const char* bullet = page.style.utf8 ? " •\u00A0" : " *\u00A0";
  std::string all = "Take care:";
  for (const auto& [severity, text] : sorted) all += bullet + text;
  page.lines.emplace_back();
  page.text(all);
}

}  // namespace

std::string season_text(const Season& season, SeasonView view, const TextStyle& style) {
  Page page{season, style, text_width(style)};
  add_heading(page);
  if (view == SeasonView::weeks) {
    add_weeks(page);
  } else {
    add_days(page);
  }
  add_refrigerator(page);
  add_advice(page);
  add_filling(page);
  add_flowers(page);
  add_shopping(page);
  add_cautions(page);
  for (std::string& line : page.lines) line = in_style(line, style);
  return joined(page.lines);
}

}  // namespace bulbwright::report
