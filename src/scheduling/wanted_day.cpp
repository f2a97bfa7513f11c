#include "scheduling/wanted_day.hpp"

#include <algorithm>
#include <compare>
#include <cstdlib>

#include "flowering/open_days.hpp"
#include "scheduling/combination_search.hpp"
#include "scheduling/schedule.hpp"
#include "scheduling/timing_options.hpp"
#include "scheduling/wanted_limit.hpp"

namespace bulbwright {
namespace {

/// What a choice for one day is worth; sums of terms by kind, compared in order.
struct DayKey {
  int closed = 0;  ///< kinds not open on the day
  int to_peaks = 0;
  int short_of_cold = 0;
  double storage_weeks = 0.0;
  auto operator<=>(const DayKey&) const = default;

  DayKey& operator+=(const DayKey& other) {
    closed += other.closed;
    to_peaks += other.to_peaks;
    short_of_cold += other.short_of_cold;
    storage_weeks += other.storage_weeks;
    return *this;
  }
};

/// Whether peaks of kinds that are not open count: only where none can be open.
enum class Closed { ignored, near_as_possible };

DayKey key_of(const StorageOption& option, Day wanted, Closed closed) {
  const bool open = option.first <= wanted && wanted <= option.last;
  const int to_peak = std::abs(option.peak - wanted);
  if (closed == Closed::near_as_possible)
    return {0, to_peak, option.short_of_cold ? 1 : 0, option.weeks};
  return {open ? 0 : 1, open ? to_peak : 0, option.short_of_cold ? 1 : 0, option.weeks};
}

struct DayChoice {
  std::size_t day = 0;
  std::vector<std::size_t> option;
  DayKey key;
  int from_ordinary = 0;
};

DayChoice best_for_day(const TimingOptions& options, Day wanted, Closed closed) {
  std::optional<DayChoice> best;
  for (std::size_t day = 0; day < options.days().size(); ++day) {
    DayChoice here;
    here.day = day;
    here.from_ordinary = std::abs(options.days()[day] - options.ordinary());
    for (const std::vector<StorageOption>& kind : options.at(day)) {
      const auto least = std::min_element(
          kind.begin(), kind.end(), [&](const StorageOption& a, const StorageOption& b) {
            return key_of(a, wanted, closed) < key_of(b, wanted, closed);
          });
      here.option.push_back(static_cast<std::size_t>(least - kind.begin()));
      here.key += key_of(*least, wanted, closed);
    }
    if (!best || std::tie(here.key, here.from_ordinary) < std::tie(best->key, best->from_ordinary))
      best = std::move(here);
  }
  return *best;
}

/// Days from a window to the nearest open flower, negative where that is before it; 0 within.
int days_from(std::span<const PlannedWave> waves, DayWindow wanted) {
  std::optional<int> nearest;
  for (const PlannedWave& wave : waves) {
    const int off = wave.first > wanted.last   ? wave.first - wanted.last
                    : wave.last < wanted.first ? wave.last - wanted.first
                                               : 0;
    if (!nearest || std::abs(off) < std::abs(*nearest)) nearest = off;
  }
  return nearest.value_or(0);
}

}  // namespace

WantedAnswer answer_within(TimingMemo& memo, Day ordinary, DayWindow wanted, LimitSet lifted) {
  const TimingOptions options{memo, ordinary, std::nullopt, lifted};
  const bool one_day = wanted.first == wanted.last;
  std::size_t day = 0;
  std::vector<std::size_t> chosen;
  const auto take_nearest_day = [&](Closed closed) {
    DayChoice choice = best_for_day(options, wanted.first, closed);
    day = choice.day;
    chosen = std::move(choice.option);
    return static_cast<std::size_t>(choice.key.closed) < memo.kinds().size();
  };
  if (one_day) {
    if (!take_nearest_day(Closed::ignored)) take_nearest_day(Closed::near_as_possible);
  } else {
    Combination best = search_combination(options, wanted, CoverageFirst::days);
    if (best.key.first == 0) {  // nothing open in the window: as near to it as can be
      take_nearest_day(Closed::near_as_possible);
    } else {
      day = best.day;
      chosen = std::move(best.option);
    }
  }

  WantedAnswer answer;
  answer.wanted = wanted;
  answer.plant = options.days()[day];
  answer.ordinary_plant = ordinary;
  for (std::size_t kind = 0; kind < chosen.size(); ++kind) {
    const StorageOption& option = options.at(day)[kind][chosen[kind]];
    answer.weeks.push_back(option.weeks);
    answer.usual_weeks.push_back(memo.at(kind, answer.plant, std::nullopt).weeks);
    answer.waves.push_back(
        time_kind(memo.kinds()[kind], memo.season(), answer.plant, option.weeks).wave);
  }
  answer.predicted = day_of_most_flower(answer.waves).value_or(answer.waves.front().first);
  if (one_day) {
    answer.open = waves_open(answer.waves, wanted.first);
    answer.days_off = answer.predicted - wanted.first;
    answer.met = answer.open > 0 && answer.open == waves_open(answer.waves, answer.predicted);
  } else {
    std::vector<DayWindow> windows = wave_windows(answer.waves);
    answer.open = open_days_of(windows, wanted).days;
    answer.days_off = days_from(answer.waves, wanted);
    answer.met = answer.open == wanted.last - wanted.first + 1;
  }
  answer.reachable = answer.open > 0 || std::abs(answer.days_off) <= wanted_tolerance_days;
  return answer;
}

WantedAnswer find_wanted_day(std::span<const TimedKind> kinds, const PotSeason& season,
                             DayWindow wanted) {
  const std::vector<ScheduledKind> scheduled = scheduled_kinds(kinds, season);
  const Day ordinary = choose_planting(scheduled, season.view(), std::nullopt).plant;
  TimingMemo memo{kinds, season};
  WantedAnswer answer = answer_within(memo, ordinary, wanted, {});
  if (answer.days_off != 0) answer.limit = binding_limit(memo, answer);
  return answer;
}

}  // namespace bulbwright
