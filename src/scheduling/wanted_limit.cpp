#include "scheduling/wanted_limit.hpp"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <tuple>

#include <fmt/core.h>

#include "base/notice_words.hpp"
#include "flowering/coverage.hpp"
#include "scheduling/schedule.hpp"

namespace bulbwright {
namespace {

/// In the order in which equal ones are told: what a grower can change first.
constexpr std::array limits_in_order{TimingLimit::storage,   TimingLimit::room,  TimingLimit::bulbs,
                                     TimingLimit::mix,       TimingLimit::least, TimingLimit::frost,
                                     TimingLimit::season_end};

/// Days from a wave to what is wanted: 0 where it is open then.
int days_from(const PlannedWave& wave, DayWindow wanted) {
  return std::max({0, wave.first - wanted.last, wanted.first - wave.last});
}

/// The kind that a lifted limit brings nearest: among those whose storage changed where any did,
/// the one whose wave gains most days, then the one whose peak does.
std::size_t most_helped(const WantedAnswer& answer, const WantedAnswer& lifted) {
  const auto gain = [&](std::size_t i) {
    const PlannedWave &before = answer.waves[i], &after = lifted.waves[i];
    const auto to_peak = [&](const PlannedWave& wave) {
      return std::abs(wave.peak - answer.wanted.first);
    };
    return std::tuple{lifted.weeks[i] != answer.weeks[i],
                      days_from(before, answer.wanted) - days_from(after, answer.wanted),
                      to_peak(before) - to_peak(after)};
  };
  std::size_t most = 0;
  for (std::size_t i = 1; i < answer.waves.size(); ++i) {
    if (gain(i) > gain(most)) most = i;
  }
  return most;
}

Day last_available(const TimingMemo& memo) {
  Day last = memo.kinds().front().ask.available;
  for (const TimedKind& kind : memo.kinds()) last = std::max(last, kind.ask.available);
  return last;
}

double highest_planting_c(const TimingMemo& memo) {
  double least = 100.0;
  for (const TimedKind& kind : memo.kinds()) {
    if (kind.ask.taxon->plant_by == PlantBy::on_arrival) continue;
    least = std::min(least, kind.ask.taxon->soil_max_c.high);
  }
  return least;
}

std::string words(TimingLimit limit, const TimingMemo& memo, const WantedAnswer& answer,
                  const WantedAnswer& lifted) {
  const TimedKind& kind = memo.kinds()[most_helped(answer, lifted)];
  const Taxon& taxon = *kind.ask.taxon;
  const std::string name = plain_name(taxon.name);
  switch (limit) {
    case TimingLimit::bulbs:
      return fmt::format("bulbs are not to be had before {}", to_words(last_available(memo)));
    case TimingLimit::mix:
      return fmt::format("the mix is too warm to plant on {} (above {:g} degrees C)",
                         to_words(lifted.plant), highest_planting_c(memo));
    case TimingLimit::frost:
      return fmt::format("planted after {}, the bulbs would not root before hard frost",
                         to_words(answer.plant));
    case TimingLimit::room:
      return fmt::format("{}: bulbs keep dry for {} at the most", name,
                         weeks_text(taxon.max_dry_storage_weeks.high));
    case TimingLimit::storage:
      return fmt::format(
          "{}: bulbs take {} in the refrigerator at the most", name,
          weeks_text(storage_limit(taxon, kind.ask.use, kind.ask.already_weeks).planned));
    case TimingLimit::least:
      return fmt::format("{}: bulbs need {} of cold at the least", name,
                         weeks_text(need_for(taxon, kind.ask.use).least));
    case TimingLimit::season_end: {
      const PotSeason& season = memo.season();
      return fmt::format("planting time ends on {}",
                         to_words(planting_season(season.season, season.hemisphere).last));
    }
  }
  return {};
}

/// How far from what is wanted: first how few kinds (or days) are open, then days off.
std::pair<int, int> distance(const WantedAnswer& answer) {
  return {-answer.open, std::abs(answer.days_off)};
}

}  // namespace

std::string binding_limit(TimingMemo& memo, const WantedAnswer& answer) {
  std::optional<WantedAnswer> best;
  TimingLimit binding = TimingLimit::storage;
  for (const TimingLimit limit : limits_in_order) {
    WantedAnswer lifted = answer_within(memo, answer.ordinary_plant, answer.wanted, only(limit));
    if (distance(lifted) < distance(best ? *best : answer)) {
      best = std::move(lifted);
      binding = limit;
    }
  }
  if (best) return words(binding, memo, answer, *best);
  const bool earlier = answer.days_off > 0;
  if (distance(answer_within(memo, answer.ordinary_plant, answer.wanted, LimitSet{}.set())) <
      distance(answer)) {
    return fmt::format(
        "no single limit: the day when bulbs can be had, the warmth of the mix and "
        "the weeks of storage together keep the flowers from being {}",
        earlier ? "earlier" : "later");
  }
  return fmt::format("the winter there decides: no planting day and no storage makes them {}",
                     earlier ? "earlier" : "later");
}

std::vector<Notice> wanted_notices(const WantedAnswer& answer) {
  const DayWindow wanted = answer.wanted;
  const auto kinds = static_cast<int>(answer.waves.size());
  const bool one_day = wanted.first == wanted.last;
  std::vector<Notice> notices;
  const auto off = [&] {
    return fmt::format("{} {}", days_text(std::abs(answer.days_off)),
                       answer.days_off < 0 ? "early" : "late");
  };
  if (!answer.reachable || answer.open == 0) {
    notices.push_back(
        {answer.reachable ? "wanted-day-missed" : "wanted-day-unreachable",
         answer.reachable ? Severity::warning : Severity::refusal,
         fmt::format("nothing can be in flower {} {}: the nearest is {} when planted on {}, {}; {}",
                     one_day ? "on" : "from",
                     one_day ? to_words(wanted.first)
                             : to_words(wanted.first) + " to " + to_words(wanted.last),
                     to_words(answer.predicted), to_words(answer.plant), off(), answer.limit)});
    return notices;
  }
  if (!one_day) {
    const int days = wanted.last - wanted.first + 1;
    notices.push_back(
        {answer.met ? "wanted-window" : "wanted-window-part", Severity::note,
         answer.met
             ? fmt::format("in flower on every day from {} to {}: planting on {} does it",
                           to_words(wanted.first), to_words(wanted.last), to_words(answer.plant))
             : fmt::format("in flower on {} of the {} days from {} to {}, the most that planting "
                           "day and storage can do",
                           answer.open, days, to_words(wanted.first), to_words(wanted.last))});
    return notices;
  }
  std::string text;
  if (kinds == 1) {
    text =
        answer.days_off == 0
            ? fmt::format("full flower expected on {} as wanted", to_words(wanted.first))
            : fmt::format("full flower expected on {}, {}: {}; some are open on {}",
                          to_words(answer.predicted), off(), answer.limit, to_words(wanted.first));
  } else {
    text = fmt::format("on {} {} of {} kinds {} in flower", to_words(wanted.first), answer.open,
                       kinds, answer.open == 1 ? "is" : "are");
    if (!answer.met)
      text +=
          fmt::format("; most are on {}, {}: {}", to_words(answer.predicted), off(), answer.limit);
    std::string closed;
    for (const PlannedWave& wave : answer.waves) {
      if (wave.first <= wanted.first && wanted.first <= wave.last) continue;
      closed += fmt::format("{}{} {} to {}", closed.empty() ? "" : ", ", wave.name,
                            to_words(wave.first), to_words(wave.last));
    }
    if (!closed.empty()) text += "; not " + closed;
  }
  const bool well = answer.met && (kinds > 1 || answer.days_off == 0);
  notices.push_back({well ? "wanted-day" : "wanted-day-off",
                     well ? Severity::note : Severity::warning, std::move(text)});
  return notices;
}

}  // namespace bulbwright
