#include "bulbwright/timing.hpp"

#include <algorithm>
#include <array>

#include "bulbwright/display.hpp"
#include "bulbwright/flowering.hpp"

namespace bulbwright {
namespace {

/// The state in which a kind is planted: cold it came with, then storage.
ColdState at_planting(const ColdAsk& ask, double storage_weeks) {
  return after_storage(cold_already(Weeks{ask.already_weeks}), Weeks{storage_weeks},
                       ask.storage_temperature);
}

Day shoots_before(Day first_flower, Day planted) {
  return std::max(first_flower - shoots_before_flower_days, planted + shoots_after_planting_days);
}

PlannedWave wave_of(const TimedKind& kind, const PotSeason& season, Day planted,
                    const ColdPlan& cold) {
  const Taxon& taxon = *kind.ask.taxon;
  const ColdState start = at_planting(kind.ask, cold.cold.storage_weeks);
  PlannedWave wave;
  wave.taxon = taxon.id;
  wave.name = taxon.name;
  wave.layer = kind.layer;
  for (std::size_t i = 0; i < season.winters.size(); ++i) {
    const FlowerDays days = flower_days(taxon, kind.ask.use, season.winters[i], planted, start);
    if (i == 0) {
      wave.earliest_first = days.first;
      wave.latest_last = days.last;
    }
    wave.earliest_first = std::min(wave.earliest_first, days.first);
    wave.latest_last = std::max(wave.latest_last, days.last);
    if (i == season.normal) {
      wave.first = days.first;
      wave.peak = days.peak;
      wave.last = days.last;
    }
  }
  return wave;
}

}  // namespace

SeasonView PotSeason::view() const {
  return {season, hemisphere, &winters[normal], &winters[mild], &winters[cold]};
}

PotSeason pot_season(const Setting& setting, const PotThermal& pot) {
  PotSeason season;
  season.season = setting.season;
  season.hemisphere = setting.hemisphere;
  season.normal = setting.normal;
  season.mild = setting.mild;
  season.cold = setting.cold;
  for (const Winter& winter : setting.winters) {
    season.winters.push_back(pot_winter(winter, pot, setting.exposure));
  }
  return season;
}

Day shoots_when_chilled(const TimedKind& kind, const PotSeason& season, Day planted) {
  const Taxon& taxon = *kind.ask.taxon;
  const ColdState full = cold_already(Weeks{need_for(taxon, kind.ask.use).recommended});
  const FlowerDays days =
      flower_days(taxon, kind.ask.use, season.winters[season.normal], planted, full);
  return shoots_before(days.first, planted);
}

KindTiming time_kind(const TimedKind& kind, const PotSeason& season, Day planted,
                     std::optional<double> weeks) {
  ColdAsk ask = kind.ask;
  if (weeks) ask.fixed_weeks = weeks;
  const SeasonView view = season.view();
  const std::array<const PotWinter*, 3> winters{view.normal, view.mild, view.cold};
  KindTiming timing;
  timing.cold = plan_cold(ask, planted, shoots_when_chilled(kind, season, planted), winters);
  timing.wave = wave_of(kind, season, planted, timing.cold);
  timing.shoots = shoots_before(timing.wave.first, planted);
  return timing;
}

Timing time_pot(std::span<const TimedKind> kinds, const PotSeason& season, Day planted) {
  Timing timing;
  timing.plant = planted;
  std::vector<PlannedWave> waves;
  for (const TimedKind& kind : kinds) {
    timing.kinds.push_back(time_kind(kind, season, planted));
    waves.push_back(timing.kinds.back().wave);
  }
  timing.display = display_of(waves);
  return timing;
}

}  // namespace bulbwright
