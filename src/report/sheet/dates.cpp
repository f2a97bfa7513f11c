#include <algorithm>

#include <fmt/core.h>

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
  std::string text;
};

/// What a task is called where the plan has no words of its own or there is no room for them.
const char* task_words(Task task) {
  switch (task) {
    case Task::order_by:
      return "have the bulbs ordered";
    case Task::bulbs_arrive:
      return "have the bulbs in the house, airy and cool";
    case Task::storage_start:
      return "into the refrigerator";
    case Task::storage_check:
      return "look the stored bulbs over every week";
    case Task::pot_and_chill:
      return "pot up and chill in the pot";
    case Task::soak:
      return "soak the bulbs";
    case Task::plant:
      return "plant";
    case Task::water_in:
      return "water in";
    case Task::top_up:
      return "top up the mix";
    case Task::keep_moist:
      return "keep moist, not wet";
    case Task::shelter:
      return "shelter from hard frost";
    case Task::uncover:
      return "uncover";
    case Task::shoots:
      return "first shoots";
    case Task::flower:
      return "in flower";
    case Task::bring_in:
      return "bring in to a light, cool room";
    case Task::after_flowering:
      return "after flowering";
  }
  return "";
}

/// Tasks that other parts tell more of, so that a few words do when set close.
bool told_in_steps(Task task) {
  switch (task) {
    case Task::order_by:
    case Task::bulbs_arrive:
    case Task::storage_check:
    case Task::plant:
    case Task::water_in:
    case Task::top_up:
    case Task::keep_moist:
      return true;
    default:
      return false;
  }
}

/// Said by another part already: flowering by the chart, and, when set close, the start of storage
/// by the refrigerator's.
bool said_elsewhere(const Plan& plan, const PlannedDate& date, int closeness) {
  if (date.task == Task::flower) return !plan.waves.empty();
  if (date.task != Task::storage_start || closeness < 1) return false;
  return std::any_of(plan.cold.begin(), plan.cold.end(), [&](const TaxonCold& cold) {
    return cold.storage_start == date.date && cold.taxon == date.taxon &&
           cold.storage_weeks >= 0.05;
  });
}

std::string name_of(const Plan& plan, const std::string& taxon) {
  for (const PlannedLayer& layer : plan.layers) {
    for (const LayerBulbs& bulbs : layer.bulbs) {
      if (bulbs.taxon == taxon) return bulbs.name;
    }
  }
  return "";
}

/// The first noses of all kinds as one stretch of days, the earliest kind named.
void merge_noses(const Plan& plan, std::vector<PlannedDate>& sorted) {
  const auto noses = [](const PlannedDate& date) { return date.task == Task::shoots; };
  const auto first = std::find_if(sorted.begin(), sorted.end(), noses);
  if (first == sorted.end() || std::count_if(sorted.begin(), sorted.end(), noses) < 2) return;
  Day last = first->date;
  for (const PlannedDate& date : sorted) {
    if (noses(date)) last = std::max(last, date.until.value_or(date.date));
  }
  const std::string name = name_of(plan, first->taxon);
  first->text = "first noses";
  if (last > first->date && !name.empty()) first->text += ", " + several(name) + " first";
  first->until = last;
  sorted.erase(std::remove_if(std::next(first), sorted.end(), noses), sorted.end());
}

/// What comes after flowering, kinds that are treated alike as one stretch of days.
void merge_after_flowering(const Plan& plan, std::vector<PlannedDate>& sorted) {
  std::vector<std::size_t> places;
  std::vector<std::string> texts;
  for (std::size_t i = 0; i < sorted.size(); ++i) {
    if (sorted[i].task != Task::after_flowering) continue;
    places.push_back(i);
    texts.push_back(plan_words(plan, sorted[i].text, TextStyle{}));
  }
  const MergedTexts merged = merge_kinds(plan, texts);
  std::vector<std::size_t> kept(merged.texts.size(), sorted.size());
  std::vector<bool> gone(sorted.size(), false);
  for (std::size_t i = 0; i < places.size(); ++i) {
    PlannedDate& date = sorted[places[i]];
    std::size_t& first = kept[merged.same[i]];
    if (first == sorted.size()) {
      first = places[i];
      date.text = merged.texts[merged.same[i]];
    } else {
      PlannedDate& whole = sorted[first];
      whole.until = std::max(whole.until.value_or(whole.date), date.until.value_or(date.date));
      gone[places[i]] = true;
    }
  }
  std::vector<PlannedDate> rest;
  for (std::size_t i = 0; i < sorted.size(); ++i) {
    if (!gone[i]) rest.push_back(sorted[i]);
  }
  sorted = rest;
}

/// Dates in order, those of one day (or stretch) on one line.
std::vector<DateLine> merged_dates(const Plan& plan, const Setting& setting) {
  std::vector<PlannedDate> sorted;
  for (const PlannedDate& date : plan.dates) {
    if (!said_elsewhere(plan, date, setting.closeness)) sorted.push_back(date);
  }
  std::stable_sort(sorted.begin(), sorted.end(),
                   [](const PlannedDate& a, const PlannedDate& b) { return a.date < b.date; });
  if (setting.closeness >= 1) {
    merge_noses(plan, sorted);
    merge_after_flowering(plan, sorted);
  }
  std::vector<DateLine> lines;
  for (const PlannedDate& date : sorted) {
    const bool brief = date.text.empty() || (setting.closeness >= 3 && told_in_steps(date.task));
    const std::string text =
        brief ? task_words(date.task) : plan_words(plan, date.text, setting.style);
    const Day to = date.until.value_or(date.date);
    const auto same = std::find_if(lines.begin(), lines.end(), [&](const DateLine& line) {
      return line.from == date.date && line.to == to;
    });
    if (same == lines.end()) {
      lines.push_back({date.date, to, text});
    } else if (same->text.find(text) == std::string::npos) {
      same->text += "; " + text;
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
                        days_text(line.from, line.to, line.from.year() != year), line.text);
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

}  // namespace

Lines refrigerator_lines(const Plan& plan, const Setting& setting) {
  std::vector<TaxonCold> stored;
  std::vector<std::string> others;
  bool short_of_cold = false;
  for (const TaxonCold& cold : plan.cold) {
    if (cold.storage_weeks >= 0.05) {
      stored.push_back(cold);
    } else {
      others.push_back(several(in_style(cold.name, setting.style)));
      short_of_cold = short_of_cold || cold.missing_weeks >= 0.05;
    }
  }
  if (plan.cold.empty() || (stored.empty() && short_of_cold)) return {};
  if (stored.empty()) {
    return labelled("Refrigerate", "Nothing: no refrigerator needed.", setting);
  }
  const bool one_temperature =
      std::all_of(stored.begin(), stored.end(), [&](const TaxonCold& cold) {
        return rounded(cold.storage_temperature.value(), 0.1) ==
               rounded(stored[0].storage_temperature.value(), 0.1);
      });
  std::string tail = advice(stored, one_temperature, setting.style);
  if (!others.empty()) tail += fmt::format(" Not the {}.", listed(others));
  const bool one_end = std::all_of(stored.begin(), stored.end(), [&](const TaxonCold& cold) {
    return cold.storage_start && cold.storage_end == stored[0].storage_end;
  });
  if (setting.closeness >= 2 && one_end && stored.size() > 1) {
    return labelled("Refrigerate",
                    until_one_day(stored, !one_temperature, setting.style) + " " + tail, setting);
  }
  Lines lines;
  for (const TaxonCold& cold : stored) {
    const std::string text = refrigerated(cold, !one_temperature, setting.style);
    append(lines, hanging(lines.empty() ? "Refrigerate" : "", text, label_indent, setting.width));
  }
  append(lines, hanging("", tail, label_indent, setting.width));
  return lines;
}

Lines date_lines(const Plan& plan, const Setting& setting) {
  const std::vector<DateLine> dates = merged_dates(plan, setting);
  if (dates.empty()) return {};
  if (setting.closeness >= 5) {
    return labelled("Dates", flowing(dates), setting);
  }
  Lines lines;
  int year = 0;
  for (const DateLine& line : dates) {
    const bool new_year = line.from.year() != year;
    year = line.from.year();
    const std::string label =
        pad_right(lines.empty() ? "Dates" : "", 8) + (new_year ? fmt::format("{}", year) : "");
    const std::string days = days_text(line.from, line.to, false);
    append(lines, hanging(pad_right(label, label_indent) + days, capitalised(line.text),
                          label_indent + days_columns, setting.width));
  }
  return lines;
}

}  // namespace bulbwright::report
