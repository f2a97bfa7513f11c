#include "scheduling/timing_options.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "scheduling/schedule.hpp"

namespace bulbwright {
namespace {

constexpr int earlier_bulbs_days = 70;  ///< how much earlier bulbs are thought to be had, if lifted
constexpr int later_season_days = 56;   ///< how much longer planting time lasts, if lifted
constexpr int least_rooting_days = 14;  ///< half of the usual four weeks. common practice
constexpr double most_weeks_tried = 24.0;
constexpr double tolerance_weeks = 0.05;

double in_room_weeks(const ColdAsk& ask, Day planted, double stored) {
  return (planted - ask.available) / 7.0 - stored;
}

}  // namespace

LimitSet only(TimingLimit limit) {
  return LimitSet{}.set(static_cast<std::size_t>(limit));
}

const TimingMemo::Entry& TimingMemo::at(std::size_t kind, Day planted,
                                        std::optional<double> weeks) {
  const std::tuple key{kind, planted.serial(), weeks.value_or(-1.0)};
  const auto known = entries_.find(key);
  if (known != entries_.end()) return known->second;
  const KindTiming timing = time_kind(kinds_[kind], *season_, planted, weeks);
  const Day last = timing.wave.flowers ? timing.wave.last : timing.wave.first - 1;
  const Entry entry{timing.cold.cold.storage_weeks, timing.wave.first, timing.wave.peak, last,
                    timing.cold.cold.missing_weeks};
  entries_.emplace(std::tuple{kind, planted.serial(), entry.weeks}, entry);
  return entries_.insert_or_assign(key, entry).first->second;
}

TimingOptions::TimingOptions(TimingMemo& memo, Day ordinary, std::optional<Day> given,
                             LimitSet lifted)
    : memo_{&memo}, ordinary_{given.value_or(ordinary)}, lifted_{lifted} {
  const PotSeason& season = memo.season();
  DayWindow range = planting_season(season.season, season.hemisphere);
  if (this->lifted(TimingLimit::bulbs)) range.first = range.first - earlier_bulbs_days;
  if (this->lifted(TimingLimit::season_end)) range.last = range.last + later_season_days;
  range.first = std::min(range.first, ordinary_);
  range.last = std::max(range.last, ordinary_);
  if (given) range = {*given, *given};
  const bool all_forced = std::ranges::all_of(
      memo.kinds(), [](const TimedKind& kind) { return kind.ask.use == Use::forcing; });
  const std::optional<Day> frost = first_hard_frost(season.winters[season.normal], range.first);
  for (Day day = range.first; day <= range.last; ++day) {
    if (day != ordinary_ && !all_forced) {
      if (!mix_allows(day)) continue;
      const bool late = frost && *frost - day < least_rooting_days;
      const bool as_late = frost && ordinary_ >= day && *frost - ordinary_ < least_rooting_days;
      if (late && !as_late && !this->lifted(TimingLimit::frost)) continue;
    }
    std::vector<std::vector<StorageOption>> options;
    for (std::size_t kind = 0; kind < memo.kinds().size(); ++kind) {
      options.push_back(options_of(kind, day));
      if (options.back().empty()) break;
    }
    if (options.empty() || options.back().empty()) continue;
    days_.push_back(day);
    options_.push_back(std::move(options));
  }
}

bool TimingOptions::mix_allows(Day day) const {
  if (lifted(TimingLimit::mix)) return true;
  const PotWinter& normal = memo_->season().winters[memo_->season().normal];
  const double here = rounded(mix_at_planting(normal, day).value(), 0.1);
  const double ordinary = rounded(mix_at_planting(normal, ordinary_).value(), 0.1);
  return std::all_of(memo_->kinds().begin(), memo_->kinds().end(), [&](const TimedKind& kind) {
    const Taxon& taxon = *kind.ask.taxon;
    return kind.ask.use == Use::forcing || taxon.plant_by == PlantBy::on_arrival ||
           here <= std::max(taxon.soil_max_c.high, ordinary);
  });
}

bool TimingOptions::takes(std::size_t kind, Day day, const TimingMemo::Entry& entry) const {
  const ColdAsk& ask = memo_->kinds()[kind].ask;
  const Taxon& taxon = *ask.taxon;
  const TimingMemo::Entry& ordinary = memo_->at(kind, ordinary_, std::nullopt);
  const double by_days =
      (day - ask.available + (lifted(TimingLimit::bulbs) ? earlier_bulbs_days : 0)) / 7.0;
  const bool forced = ask.use == Use::forcing;  // cold after planting, not before
  if (by_days < 0.0 || (!forced && entry.weeks > by_days + 1e-9)) return false;
  const double room = in_room_weeks(ask, day, forced ? 0.0 : entry.weeks);
  const double usual_room = in_room_weeks(ask, ordinary_, forced ? 0.0 : ordinary.weeks);
  if (!lifted(TimingLimit::room) &&
      room > std::max(taxon.max_dry_storage_weeks.high, usual_room) + 1e-9) {
    return false;
  }
  const WeekNeed need = need_for(taxon, ask.use);
  const double allowed = std::max(need.recommended - need.least, ordinary.missing_weeks);
  return lifted(TimingLimit::least) || entry.missing_weeks <= allowed + tolerance_weeks;
}

std::vector<StorageOption> TimingOptions::options_of(std::size_t kind, Day day) const {
  const ColdAsk& ask = memo_->kinds()[kind].ask;
  const Taxon& taxon = *ask.taxon;
  const TimingMemo::Entry usual = memo_->at(kind, day, std::nullopt);
  std::vector<double> weeks{usual.weeks};
  if (!ask.fixed_weeks && !ask.never_for_a_wish && taxon.cold_form == ColdForm::dry_ok) {
    double most = need_for(taxon, ask.use).most - ask.already_weeks;
    if (ask.use == Use::outdoors)
      most = std::min(most, storage_limit(taxon, ask.use, ask.already_weeks).planned);
    if (lifted(TimingLimit::storage)) most = most_weeks_tried;
    for (double week = 0.0; week <= most; week += 1.0) weeks.push_back(week);
  }
  std::sort(weeks.begin(), weeks.end());
  weeks.erase(std::unique(weeks.begin(), weeks.end()), weeks.end());
  const double usual_lack = memo_->at(kind, ordinary_, std::nullopt).missing_weeks;
  std::vector<StorageOption> options;
  for (const double week : weeks) {
    const TimingMemo::Entry& entry = memo_->at(kind, day, week);
    const bool ordinary = day == ordinary_ && week == usual.weeks;
    if (!ordinary && !takes(kind, day, entry)) continue;
    const StorageOption option{
        week, entry.first, entry.peak, entry.last,
        entry.missing_weeks > std::max(least_lack_weeks, usual_lack) + tolerance_weeks};
    const auto same = std::find_if(options.begin(), options.end(), [&](const StorageOption& o) {
      return o.first == option.first && o.peak == option.peak && o.last == option.last &&
             o.short_of_cold <= option.short_of_cold;
    });
    if (same == options.end()) options.push_back(option);
  }
  return options;
}

}  // namespace bulbwright
