#include "scheduling/spread.hpp"

#include "flowering/display.hpp"
#include "scheduling/combination_search.hpp"
#include "scheduling/schedule.hpp"
#include "scheduling/timing_options.hpp"

namespace bulbwright {
namespace {

constexpr int widest_days = 400;  ///< no wave opens so long before or after its planting season

std::vector<Remark> run_of(const Display& display) {
  if (!display.longest) return {{RemarkCode::nothing_in_flower}};
  const int longest = display.longest->last - display.longest->first + 1;
  Remark run{RemarkCode::longest_run,
             {},
             {{DetailName::days, longest}, {DetailName::window, *display.longest}}};
  if (display.days_in_flower > longest)
    run.details.push_back({DetailName::all, display.days_in_flower});
  return {std::move(run)};
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
  const SpreadReport& before = answer.before;
  Notice notice{NoticeCode::spread,
                Severity::note,
                {},
                {{DetailName::after, run_of(display_of(answer.waves))}}};
  if (answer.plant == before.plant_before && answer.weeks == before.weeks_before)
    return {std::move(notice)};
  std::vector<Remark> changes;
  if (answer.plant != before.plant_before) {
    changes.push_back(
        {RemarkCode::planted_instead,
         {},
         {{DetailName::planted, answer.plant}, {DetailName::usual, before.plant_before}}});
  }
  for (std::size_t i = 0; i < kinds.size(); ++i) {
    if (answer.weeks[i] == before.weeks_before[i]) continue;
    const Taxon& taxon = *kinds[i].ask.taxon;
    changes.push_back({RemarkCode::stored_instead,
                       {{taxon.id, taxon.name}},
                       {{DetailName::given, Weeks{answer.weeks[i]}},
                        {DetailName::usual, Weeks{before.weeks_before[i]}}}});
  }
  notice.details.push_back({DetailName::before, run_of(before.before)});
  notice.details.push_back({DetailName::changes, std::move(changes)});
  return {std::move(notice)};
}

}  // namespace bulbwright
