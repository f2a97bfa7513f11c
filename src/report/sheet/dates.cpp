#include <algorithm>

#include <fmt/format.h>

#include "report/date_text.hpp"
#include "report/sheet/parts.hpp"
#include "report/sheet/words.hpp"
#include "report/text_units.hpp"

namespace bulbwright::report {
namespace {

/// "20 Nov to 17 Apr"
constexpr int days_columns = 17;

struct DateLine {
  Day from;
  Day to;
  std::vector<std::string> texts;
};

/// Said by another part already: flowering by the chart, and, when set close, the start of storage
/// by the refrigerator's.
bool said_elsewhere(const Plan& plan, const PlannedDate& date, int closeness) {
  if (date.task == Task::flower) return !plan.waves.empty();
  if (date.task != Task::storage_start || closeness < 1) return false;
  return std::any_of(plan.cold.begin(), plan.cold.end(), [&](const TaxonCold& cold) {
    return cold.storage_start == date.date && !date.kinds.empty() &&
           cold.taxon == date.kinds.front().taxon && cold.storage_weeks >= 0.05;
  });
}

/// A date with what is written beside it.
struct SheetDate {
  PlannedDate date;
  std::string text;
};

/// The first noses of all kinds as one stretch of days. The earliest kind is named where it is the
/// first to flower as well: early kinds rush from noses to flowers.
void merge_noses(std::vector<SheetDate>& sorted, const Plan& plan) {
  const auto noses = [](const SheetDate& entry) { return entry.date.task == Task::shoots; };
  const auto first = std::find_if(sorted.begin(), sorted.end(), noses);
  if (first == sorted.end() || std::count_if(sorted.begin(), sorted.end(), noses) < 2) return;
  PlannedDate& whole = first->date;
  Day last = whole.date;
  for (const SheetDate& entry : sorted) {
    if (noses(entry)) last = std::max(last, entry.date.until.value_or(entry.date.date));
  }
  const bool one_kind = std::all_of(sorted.begin(), sorted.end(), [&](const SheetDate& entry) {
    return !noses(entry) || entry.date.kinds == whole.kinds;
  });
  const auto flowers_later = [&](const PlannedWave& wave) {
    return wave.flowers && !whole.kinds.empty() && whole.kinds.front().taxon == wave.taxon &&
           wave.first > plan.display.first;
  };
  if (last == whole.date || one_kind || std::ranges::any_of(plan.waves, flowers_later))
    whole.kinds.clear();
  whole.until = last;
  first->text = first_noses_text(whole);
  sorted.erase(std::remove_if(std::next(first), sorted.end(), noses), sorted.end());
}

/// What comes after flowering, kinds that are treated alike as one stretch of days.
void merge_after_flowering(std::vector<SheetDate>& sorted, bool one_kind, const TextStyle& style) {
  std::vector<SheetDate> kept;
  for (SheetDate& entry : sorted) {
    const PlannedDate& date = entry.date;
    const auto same = std::find_if(kept.begin(), kept.end(), [&](const SheetDate& other) {
      return date.task == Task::after_flowering && other.date.task == date.task &&
             other.date.after == date.after;
    });
    if (same == kept.end()) {
      kept.push_back(std::move(entry));
      continue;
    }
    PlannedDate& whole = same->date;
    for (const KindName& kind : date.kinds) {
      if (std::find(whole.kinds.begin(), whole.kinds.end(), kind) == whole.kinds.end())
        whole.kinds.push_back(kind);
    }
    whole.until = std::max(whole.until.value_or(whole.date), date.until.value_or(date.date));
    // Layers of one kind are emptied out together.
    if (one_kind && date.after == AfterFlowering::discard) {
      whole.date = *whole.until;
      whole.until.reset();
    }
    same->text = date_text(whole, style);
  }
  sorted = std::move(kept);
}

/// Several layers of one kind: their dates need no names to be told together.
bool one_kind(const Plan& plan) {
  return std::all_of(plan.waves.begin(), plan.waves.end(), [&](const PlannedWave& wave) {
    return wave.taxon == plan.waves.front().taxon;
  });
}

/// Dates in order, those of one day (or stretch) on one line.
std::vector<DateLine> merged_dates(const Plan& plan, const SheetLayout& layout) {
  const TextStyle& style = layout.style;
  std::vector<SheetDate> sorted;
  for (const PlannedDate& date : plan.dates) {
    if (said_elsewhere(plan, date, layout.closeness)) continue;
    sorted.push_back(
        {date, layout.closeness >= 3 ? short_date_text(date, style) : date_text(date, style)});
  }
  std::stable_sort(sorted.begin(), sorted.end(), [](const SheetDate& a, const SheetDate& b) {
    return a.date.date < b.date.date;
  });
  if (layout.closeness >= 1 || one_kind(plan)) {
    merge_noses(sorted, plan);
    merge_after_flowering(sorted, one_kind(plan), style);
  }
  std::vector<DateLine> lines;
  for (const SheetDate& entry : sorted) {
    const Day from = entry.date.date, to = entry.date.until.value_or(from);
    const std::string text = in_style(entry.text, style);
    const auto same = std::find_if(lines.begin(), lines.end(), [&](const DateLine& line) {
      return line.from == from && line.to == to;
    });
    if (same == lines.end()) {
      lines.push_back({from, to, {text}});
    } else if (std::find(same->texts.begin(), same->texts.end(), text) == same->texts.end()) {
      same->texts.push_back(text);
    }
  }
  return lines;
}

/// All dates in one flowing text, years where they change.
std::string flowing(const std::vector<DateLine>& dates) {
  std::string text;
  int year = 0;
  for (const DateLine& line : dates) {
    text += fmt::format("{}{}: {}", text.empty() ? "" : ". ",
                        days_text(line.from, line.to, line.from.year() != year),
                        fmt::join(line.texts, "; "));
    year = line.from.year();
  }
  return text + ".";
}

/// What is particular to one kind, behind its dates.
std::string particulars(const TaxonCold& cold, bool with_temperature, const TextStyle& style) {
  std::string text;
  if (with_temperature) text += ", at " + temperature_text(cold.storage_temperature, style);
  if (cold.chilled_in_pot) text += ", potted first and kept moist";
  if (cold.already_weeks > 0.0) {
    text += fmt::format(" (after the {} they came with)", short_number(cold.already_weeks));
  }
  return text;
}

std::string kind_and_weeks(const TaxonCold& cold, const TextStyle& style) {
  const std::string weeks = short_number(cold.storage_weeks);
  return fmt::format("{} {}\u00A0{}", several(in_style(cold.name, style)), weeks,
                     weeks == "1" ? "week" : "weeks");
}

/// One kind with its stretch of days.
std::string refrigerated(const TaxonCold& cold, bool with_temperature, const TextStyle& style) {
  std::string text = kind_and_weeks(cold, style);
  if (cold.storage_start && cold.storage_end) {
    text += fmt::format(", {}", days_text(*cold.storage_start, *cold.storage_end, true));
  }
  return text + particulars(cold, with_temperature, style) + ".";
}

/// All kinds in one sentence: they come out on one day.
std::string until_one_day(const std::vector<TaxonCold>& stored, bool with_temperature,
                          const TextStyle& style) {
  std::string text;
  for (const TaxonCold& cold : stored) {
    text += fmt::format("{}{} from {}{}", text.empty() ? "" : "; ", kind_and_weeks(cold, style),
                        day_text(*cold.storage_start, false),
                        particulars(cold, with_temperature, style));
  }
  return fmt::format("{}; all until {}.", text, day_text(*stored[0].storage_end, true));
}

std::string advice(const std::vector<TaxonCold>& stored, bool one_temperature,
                   const TextStyle& style) {
  const bool any_dry = std::any_of(stored.begin(), stored.end(),
                                   [](const TaxonCold& cold) { return !cold.chilled_in_pot; });
  return sentence(fmt::format(
      "{}in the dark, {}no ripening fruit in the same refrigerator",
      one_temperature
          ? fmt::format("at {}, ", temperature_text(stored[0].storage_temperature, style))
          : "",
      any_dry ? "dry in paper or mesh, " : ""));
}

/// Two layers of a kind that wait in the refrigerator alike go into one bag.
bool one_bag(const TaxonCold& a, const TaxonCold& b) {
  return a.taxon == b.taxon && a.storage_weeks == b.storage_weeks &&
         a.storage_start == b.storage_start && a.storage_end == b.storage_end &&
         a.storage_temperature == b.storage_temperature && a.chilled_in_pot == b.chilled_in_pot;
}

}  // namespace

Lines refrigerator_lines(const Plan& plan, const SheetLayout& layout) {
  std::vector<TaxonCold> stored;
  std::vector<std::string> others;
  bool short_of_cold = false;
  for (const TaxonCold& cold : plan.cold) {
    if (cold.storage_weeks >= 0.05) {
      const bool said = std::any_of(stored.begin(), stored.end(),
                                    [&](const TaxonCold& other) { return one_bag(other, cold); });
      if (!said) stored.push_back(cold);
    } else {
      others.push_back(several(in_style(cold.name, layout.style)));
      short_of_cold = short_of_cold || cold.missing_weeks >= 0.05;
    }
  }
  if (plan.cold.empty() || (stored.empty() && short_of_cold)) return {};
  if (stored.empty()) {
    const bool came_cold = std::any_of(
        plan.cold.begin(), plan.cold.end(),
        [](const TaxonCold& cold) { return cold.already_weeks > 0.0 && !cold.chilled_in_pot; });
    if (came_cold) {
      return labelled(
          "Refrigerate",
          "Bulbs that came cooled stay in the refrigerator to the hour of planting; they "
          "need no more weeks.",
          layout);
    }
    return labelled("Refrigerate", "Nothing: no refrigerator needed.", layout);
  }
  const bool one_temperature =
      std::all_of(stored.begin(), stored.end(), [&](const TaxonCold& cold) {
        return rounded(cold.storage_temperature.value(), 0.1) ==
               rounded(stored[0].storage_temperature.value(), 0.1);
      });
  std::string tail = advice(stored, one_temperature, layout.style);
  if (!others.empty()) tail += fmt::format(" Not the {}.", listed(others));
  const bool one_end = std::all_of(stored.begin(), stored.end(), [&](const TaxonCold& cold) {
    return cold.storage_start && cold.storage_end == stored[0].storage_end;
  });
  if (layout.closeness >= 2 && one_end && stored.size() > 1) {
    return labelled("Refrigerate",
                    until_one_day(stored, !one_temperature, layout.style) + " " + tail, layout);
  }
  Lines lines;
  for (const TaxonCold& cold : stored) {
    const std::string text = refrigerated(cold, !one_temperature, layout.style);
    append(lines, hanging(lines.empty() ? "Refrigerate" : "", text, label_indent, layout.width));
  }
  append(lines, hanging("", tail, label_indent, layout.width));
  return lines;
}

Lines date_lines(const Plan& plan, const SheetLayout& layout) {
  const std::vector<DateLine> dates = merged_dates(plan, layout);
  if (dates.empty()) return {};
  if (layout.closeness >= 5) {
    return labelled("Dates", flowing(dates), layout);
  }
  Lines lines;
  int year = 0;
  for (const DateLine& line : dates) {
    const bool new_year = line.from.year() != year;
    year = line.from.year();
    const std::string label =
        pad_right(lines.empty() ? "Dates" : "", 8) + (new_year ? fmt::format("{}", year) : "");
    const std::string days = days_text(line.from, line.to, false);
    append(lines, hanging(pad_right(label, label_indent) + days,
                          capitalised(fmt::format("{}", fmt::join(line.texts, "; "))),
                          label_indent + days_columns, layout.width));
  }
  return lines;
}

}  // namespace bulbwright::report
