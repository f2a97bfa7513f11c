#include "report/season_words.hpp"

#include <algorithm>
#include <map>

#include <fmt/core.h>

#include "report/date_text.hpp"
#include "report/notice_text.hpp"
#include "report/sheet/words.hpp"
#include "report/text_layout.hpp"
#include "report/text_units.hpp"

namespace bulbwright::report {
namespace {

/// Names in one sentence; more are counted.
constexpr std::size_t most_names = 12;

std::string name_of(const Season& season, std::size_t pot, const TextStyle& style) {
  return in_style(printable(season.pots[pot].name), style);
}

std::size_t planted_pots(const Season& season) {
  return static_cast<std::size_t>(std::count_if(season.pots.begin(), season.pots.end(),
                                                [](const SeasonPot& pot) { return pot.ok(); }));
}

/// The pots of one kind, as "21 south steps, 30 porch" where bulbs are counted.
std::string shares_text(const Season& season, const std::vector<JobKind>& kinds,
                        const TextStyle& style) {
  std::vector<std::size_t> pots;
  std::string text;
  for (const JobKind& kind : kinds) {
    pots.push_back(kind.pot);
    text += fmt::format("{}{}\u00A0{}", text.empty() ? "" : ", ", kind.bulbs,
                        name_of(season, kind.pot, style));
  }
  const bool counted =
      std::all_of(kinds.begin(), kinds.end(), [](const JobKind& kind) { return kind.bulbs > 0; });
  if (!counted || kinds.size() == 1 || kinds.size() > most_names)
    return pots_text(season, pots, style);
  return text;
}

/// Kinds in the order in which they are first named, each with its pots.
std::vector<std::vector<JobKind>> by_kind(const std::vector<JobKind>& kinds) {
  std::vector<std::vector<JobKind>> sorted;
  std::map<std::string, std::size_t> index;
  for (const JobKind& kind : kinds) {
    const auto [at, fresh] = index.try_emplace(kind.kind.taxon, sorted.size());
    if (fresh) sorted.emplace_back();
    sorted[at->second].push_back(kind);
  }
  return sorted;
}

std::string stored_text(const Season& season, const SharedJob& job, const TextStyle& style) {
  std::string text = "refrigerate ";
  bool first = true;
  for (const std::vector<JobKind>& kinds : by_kind(job.kinds)) {
    int bulbs = 0;
    for (const JobKind& kind : kinds) bulbs += kind.bulbs;
    const std::string name = in_style(
        bulbs == 1 ? plain_name(kinds.front().kind.name) : several(kinds.front().kind.name), style);
    text += fmt::format("{}{}\u00A0{} ({})", first ? "" : "; ", bulbs, name,
                        shares_text(season, kinds, style));
    first = false;
  }
  return text;
}

std::string planted_text(const Season& season, const SharedJob& job, const TextStyle& style) {
  int bulbs = 0;
  Litres mix{0.0};
  for (const std::size_t pot : job.pots) {
    const Plan& plan = *season.pots[pot].plan;
    for (const PlannedLayer& layer : plan.layers) bulbs += layer.count;
    mix += plan.materials.mix_loose;
  }
  return fmt::format("fill, plant and water in {} ({}, {} of mix)",
                     pots_text(season, job.pots, style), counted(bulbs, "bulb", "bulbs"),
                     litres_text(mix, style));
}

/// What is to be done, as for one pot, with all the kinds it is about.
std::string done_text(const SharedJob& job, const TextStyle& style) {
  PlannedDate date{job.date, job.until, job.task, {}, 0, job.after, job.winter, job.details};
  for (const std::vector<JobKind>& kinds : by_kind(job.kinds))
    date.kinds.push_back(kinds.front().kind);
  return short_date_text(date, style);
}

}  // namespace

std::string why_not(const SeasonPot& pot, const TextStyle& style) {
  if (!pot.plan) return printable(pot.fault);
  for (const Notice& notice : pot.plan->notices) {
    if (notice.severity == Severity::refusal)
      return plain_spaces(in_style(notice_text(notice, style), style));
  }
  return "it cannot be planted as asked";
}

std::string pots_text(const Season& season, const std::vector<std::size_t>& pots,
                      const TextStyle& style) {
  if (pots.size() > 2 && pots.size() == planted_pots(season))
    return fmt::format("all {}\u00A0pots", pots.size());
  std::vector<std::string> names;
  for (const std::size_t pot : pots) {
    if (names.size() == most_names && pots.size() > most_names + 1) break;
    names.push_back(name_of(season, pot, style));
  }
  if (names.size() < pots.size())
    names.push_back(fmt::format("{}\u00A0more pots", pots.size() - names.size()));
  return listed(names);
}

std::string job_text(const Season& season, const SharedJob& job, const TextStyle& style) {
  if (job.task == Task::storage_start) return sentence(stored_text(season, job, style));
  if (job.task == Task::plant) return sentence(planted_text(season, job, style));
  return sentence(fmt::format("{}: {}", in_style(done_text(job, style), style),
                              pots_text(season, job.pots, style)));
}

std::string ongoing_text(const SharedJob& job, const TextStyle& style) {
  return in_style(done_text(job, style), style);
}

std::string change_text(const Season& season, const RoomChange& change, const TextStyle& style) {
  if (change.sort == RoomChange::Sort::plant_later) {
    const int weeks = change.days_later() / 7;
    const int lost = change.days_in_flower_before - change.days_in_flower;
    return fmt::format("plant {} {} later, on {} ({} in flower {} {})",
                       name_of(season, change.pots.front(), style), counted(weeks, "week", "weeks"),
                       day_text(change.plant, false), counted(change.days_in_flower, "day", "days"),
                       lost == 0 ? "as before" : "instead of",
                       lost == 0 ? "" : fmt::format("{}", change.days_in_flower_before));
  }
  const std::string name =
      in_style(change.bulbs == 1 ? plain_name(change.name) : several(change.name), style);
  return fmt::format("buy the {}\u00A0{} of {} precooled, to come in the week of planting",
                     change.bulbs, name, pots_text(season, change.pots, style));
}

std::string litres_text(Litres litres, const TextStyle& style) {
  if (style.units == Units::inches) return volume_text(litres, style);
  return fmt::format("{}\u00A0l", short_number(litres.value()));
}

}  // namespace bulbwright::report
