#include "scheduling/wanted_limit.hpp"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <tuple>

#include "flowering/open_days.hpp"
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

Remark remark_of(TimingLimit limit, const TimingMemo& memo, const WantedAnswer& answer,
                 const WantedAnswer& lifted) {
  using enum RemarkCode;
  const TimedKind& kind = memo.kinds()[most_helped(answer, lifted)];
  const Taxon& taxon = *kind.ask.taxon;
  const std::vector<KindName> name{{taxon.id, taxon.name}};
  switch (limit) {
    case TimingLimit::bulbs:
      return {limit_bulbs, {}, {{DetailName::available, last_available(memo)}}};
    case TimingLimit::mix:
      return {limit_mix,
              {},
              {{DetailName::planted, lifted.plant},
               {DetailName::highest, Celsius{highest_planting_c(memo)}}}};
    case TimingLimit::frost:
      return {limit_frost, {}, {{DetailName::planted, answer.plant}}};
    case TimingLimit::room:
      return {limit_room, name, {{DetailName::most, Weeks{taxon.max_dry_storage_weeks.high}}}};
    case TimingLimit::storage: {
      const StorageLimit most = storage_limit(taxon, kind.ask.use, kind.ask.already_weeks);
      return {limit_storage, name, {{DetailName::most, Weeks{most.planned}}}};
    }
    case TimingLimit::least:
      return {limit_least, name, {{DetailName::least, Weeks{need_for(taxon, kind.ask.use).least}}}};
    case TimingLimit::season_end:
      break;
  }
  const PotSeason& season = memo.season();
  const Day last = planting_season(season.season, season.hemisphere).last;
  return {limit_season_end, {}, {{DetailName::last, last}}};
}

/// How far from what is wanted: first how few kinds (or days) are open, then days off.
std::pair<int, int> distance(const WantedAnswer& answer) {
  return {-answer.open, std::abs(answer.days_off)};
}

}  // namespace

Remark binding_limit(TimingMemo& memo, const WantedAnswer& answer) {
  using enum RemarkCode;
  std::optional<WantedAnswer> best;
  TimingLimit binding = TimingLimit::storage;
  for (const TimingLimit limit : limits_in_order) {
    WantedAnswer lifted = answer_within(memo, answer.ordinary_plant, answer.wanted, only(limit));
    if (distance(lifted) < distance(best ? *best : answer)) {
      best = std::move(lifted);
      binding = limit;
    }
  }
  if (best) return remark_of(binding, memo, answer, *best);
  const bool earlier = answer.days_off > 0;
  if (distance(answer_within(memo, answer.ordinary_plant, answer.wanted, LimitSet{}.set())) <
      distance(answer)) {
    return {earlier ? limits_together_earlier : limits_together_later, {}, {}};
  }
  return {earlier ? winter_decides_earlier : winter_decides_later, {}, {}};
}

namespace {

/// What is wanted: a day, or a window.
Detail wanted_detail(DayWindow wanted) {
  if (wanted.first == wanted.last) return {DetailName::day, wanted.first};
  return {DetailName::window, wanted};
}

/// The day of most flower, how far off it is, and why.
void add_miss(const WantedAnswer& answer, std::vector<Detail>& details) {
  details.push_back({DetailName::predicted, answer.predicted});
  details.push_back({DetailName::off, answer.days_off});
  if (answer.limit) details.push_back({DetailName::limit, std::vector<Remark>{*answer.limit}});
}

Notice none_open(const WantedAnswer& answer) {
  Notice notice;
  notice.code =
      answer.reachable ? NoticeCode::wanted_day_missed : NoticeCode::wanted_day_unreachable;
  notice.severity = answer.reachable ? Severity::warning : Severity::refusal;
  notice.details = {wanted_detail(answer.wanted), {DetailName::planted, answer.plant}};
  add_miss(answer, notice.details);
  return notice;
}

Notice window_notice(const WantedAnswer& answer) {
  const Detail wanted = wanted_detail(answer.wanted);
  if (answer.met) {
    return {NoticeCode::wanted_window,
            Severity::note,
            {},
            {wanted, {DetailName::planted, answer.plant}}};
  }
  const int days = answer.wanted.last - answer.wanted.first + 1;
  return {NoticeCode::wanted_window_part,
          Severity::note,
          {},
          {wanted, {DetailName::open, answer.open}, {DetailName::all, days}}};
}

Notice day_notice(const WantedAnswer& answer) {
  const Day wanted = answer.wanted.first;
  const auto kinds = static_cast<int>(answer.waves.size());
  const bool well = answer.met && (kinds > 1 || answer.days_off == 0);
  Notice notice;
  notice.code = well ? NoticeCode::wanted_day : NoticeCode::wanted_day_off;
  notice.severity = well ? Severity::note : Severity::warning;
  notice.details.push_back(wanted_detail(answer.wanted));
  if (kinds == 1 ? answer.days_off != 0 : !answer.met) add_miss(answer, notice.details);
  if (kinds == 1) return notice;
  notice.details.push_back({DetailName::open, answer.open});
  notice.details.push_back({DetailName::all, kinds});
  std::vector<Remark> closed;
  for (const PlannedWave& wave : answer.waves) {
    if (wave.first <= wanted && wanted <= wave.last) continue;
    const DayWindow days{wave.first, wave.last};
    closed.push_back(
        {RemarkCode::kind_flowers, {{wave.taxon, wave.name}}, {{DetailName::window, days}}});
  }
  if (!closed.empty()) notice.details.push_back({DetailName::closed, std::move(closed)});
  return notice;
}

}  // namespace

std::vector<Notice> wanted_notices(const WantedAnswer& answer) {
  if (!answer.reachable || answer.open == 0) return {none_open(answer)};
  if (answer.wanted.first != answer.wanted.last) return {window_notice(answer)};
  return {day_notice(answer)};
}

}  // namespace bulbwright
