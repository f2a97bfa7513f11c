#include "scheduling/spread.hpp"

#include <fmt/core.h>

#include "base/notice_words.hpp"
#include "flowering/display.hpp"
#include "scheduling/combination_search.hpp"
#include "scheduling/schedule.hpp"
#include "scheduling/timing_options.hpp"

namespace bulbwright {
namespace {

constexpr int widest_days = 400;  ///< no wave opens so long before or after its planting season

std::string days_words(const Display& display) {
  if (!display.longest) return "nothing in flower";
  const int longest = display.longest->last - display.longest->first + 1;
  std::string text = fmt::format("{} without a gap, {} to {}", days_text(longest),
                                 to_words(display.longest->first), to_words(display.longest->last));
  if (display.days_in_flower > longest)
    text += fmt::format(" ({} days in all)", display.days_in_flower);
  return text;
}

}  // namespace

SpreadAnswer find_spread(std::span<const TimedKind> kinds, const PotSeason& season,
                         std::optional<Day> given) {
  const Day ordinary = choose_planting(scheduled_kinds(kinds, season), season.view(), given).plant;
  TimingMemo memo{kinds, season};
  const TimingOptions options{memo, ordinary, given};
  const DayWindow planting = planting_season(season.season, season.hemisphere);
  const Combination best =
      search_combination(options, {planting.first - widest_days, planting.last + widest_days},
                         CoverageFirst::longest_run);

  SpreadAnswer answer;
  answer.plant = options.days()[best.day];
  for (std::size_t kind = 0; kind < kinds.size(); ++kind) {
    const double weeks = options.at(best.day)[kind][best.option[kind]].weeks;
    answer.weeks.push_back(weeks);
    answer.usual_weeks.push_back(memo.at(kind, answer.plant, std::nullopt).weeks);
    answer.waves.push_back(time_kind(kinds[kind], season, answer.plant, weeks).wave);
  }
  const Timing before = time_pot(kinds, season, ordinary);
  answer.before.plant_before = ordinary;
  for (const KindTiming& kind : before.kinds)
    answer.before.weeks_before.push_back(kind.cold.cold.storage_weeks);
  answer.before.before = before.display;
  return answer;
}

std::vector<Notice> spread_notices(const SpreadAnswer& answer, std::span<const TimedKind> kinds) {
  const Display after = display_of(answer.waves);
  const SpreadReport& before = answer.before;
  std::string text = fmt::format("spread out: {}", days_words(after));
  if (answer.plant == before.plant_before && answer.weeks == before.weeks_before) {
    text += "; the ordinary plan does as well";
    return {{"spread", Severity::note, std::move(text)}};
  }
  text += fmt::format("; as usually planted: {}", days_words(before.before));
  std::string changes;
  if (answer.plant != before.plant_before) {
    changes += fmt::format("planted on {} instead of {}", to_words(answer.plant),
                           to_words(before.plant_before));
  }
  for (std::size_t i = 0; i < kinds.size(); ++i) {
    if (answer.weeks[i] == before.weeks_before[i]) continue;
    changes += fmt::format("{}{} stored for {} instead of {}", changes.empty() ? "" : ", ",
                           plain_name(kinds[i].ask.taxon->name), weeks_text(answer.weeks[i]),
                           weeks_text(before.weeks_before[i]));
  }
  return {{"spread", Severity::note, text + "; " + changes}};
}

}  // namespace bulbwright
