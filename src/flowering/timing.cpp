#include "flowering/timing.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "flowering/display.hpp"
#include "flowering/doubt.hpp"

namespace bulbwright {
namespace {

constexpr double usual_depth_cm = 0.0;
constexpr Weeks least_treatment{1.0};  ///< fewer weeks in the cold are none
constexpr int indoor_days = 150;       ///< longer than any forced bulb takes

/// What grows in the warm mix of early autumn is roots: bulbs without stored cold that are planted
/// before mid-autumn flower as those planted then, to which the bloom model is fitted
/// (docs/bloom_model.md).
Day growth_start(const PotSeason& season, Day planted, const ColdState& start) {
  const Day mid_autumn = season.hemisphere == Hemisphere::north ? Day{season.season, 10, 15}
                                                                : Day{season.season, 4, 15};
  return start.weeks() < Weeks{1.0} ? std::max(planted, mid_autumn) : planted;
}

Wave noses_before_flowers(Wave wave, Day planted) {
  const Day latest = std::max(wave.first - least_shoots_lead_days, planted + 1);
  wave.shoots = std::min(wave.shoots, latest);
  return wave;
}

/// The wave of one winter, out of doors.
Wave wave_in(const TimedKind& kind, const PotSeason& season, std::size_t winter, Day planted,
             const ColdState& start, double deeper_cm) {
  BloomPlanting planting;
  planting.planted = planted;
  planting.cold = start;
  planting.stored = start.weeks();
  planting.least = Weeks{need_for(*kind.ask.taxon, kind.ask.use).least};
  planting.grows_from = growth_start(season, planted, start);
  // A pot chilled planted has its roots.
  const bool chilled_in_pot =
      kind.ask.taxon->cold_form == ColdForm::moist_only && start.weeks() > Weeks{0.0};
  planting.state = chilled_in_pot && kind.state == BulbState::dry ? BulbState::rooted : kind.state;
  planting.deeper_cm = deeper_cm;
  return noses_before_flowers(predict_wave(kind.bloom, season.bloom[winter], planting), planted);
}

/// The wave of a pot that comes into a room on `in`, rooted, with the cold it had till then; cold
/// in the planted pot is no dry storage.
Wave forced_wave(const TimedKind& kind, Day planted, Day in, const ColdState& cold) {
  BloomPlanting planting;
  planting.planted = in;
  planting.cold = cold;
  planting.stored = at_planting(kind.ask, planted, 0.0).weeks();
  planting.least = Weeks{need_for(*kind.ask.taxon, kind.ask.use).least};
  return predict_wave(kind.bloom, indoor_season(in, indoor_days, indoors), planting);
}

Day end_of_cold(const Wave& wave) {
  return std::max(wave.shoots, wave.first - most_shoots_lead_days);
}

Treatment treatment_of(const TimedKind& kind, const ColdState& start) {
  if (kind.ask.use == Use::forcing) return Treatment::forced;
  if (kind.state == BulbState::in_growth) return Treatment::in_growth;
  return start.weeks() >= least_treatment ? Treatment::refrigerated : Treatment::natural;
}

/// What a notice says of a treatment; nothing where it is the usual one.
std::optional<RemarkCode> said_of(Treatment treatment) {
  switch (treatment) {
    case Treatment::refrigerated:
      return RemarkCode::treated_cold;
    case Treatment::forced:
      return RemarkCode::treated_forced;
    case Treatment::in_growth:
      return RemarkCode::treated_in_growth;
    case Treatment::natural:
      break;
  }
  return std::nullopt;
}

void forecast(const TimedKind& kind, const PotSeason& season, Day planted, KindTiming& timing) {
  const ColdState start = at_planting(kind.ask, planted, timing.cold.cold.storage_weeks);
  if (kind.ask.use == Use::forcing) {
    const Day rooted = planted + (kind.state == BulbState::dry ? forcing_rooting_days : 0);
    timing.bring_in = std::max(rooted, timing.cold.cold.storage_end.value_or(rooted));
  }
  std::vector<Wave> waves;
  for (std::size_t i = 0; i < season.winters.size(); ++i) {
    waves.push_back(timing.bring_in ? forced_wave(kind, planted, *timing.bring_in, start)
                                    : wave_in(kind, season, i, planted, start, kind.deeper_cm));
  }
  const bool three = waves.size() == 3 && !season.recorded;
  const WaveForecast result =
      three ? forecast_of_three(kind.bloom, waves[season.normal], waves[season.mild],
                                waves[season.cold], planted)
            : forecast_of_years(kind.bloom, waves, planted);
  PlannedWave& wave = timing.wave;
  wave.taxon = kind.ask.taxon->id;
  wave.name = kind.ask.taxon->name;
  wave.layer = kind.layer;
  wave.first = result.wave.first;
  wave.peak = result.wave.peak;
  wave.last = result.wave.last;
  wave.earliest_first = result.earliest_first;
  wave.latest_last = result.latest_last;
  // The poorest winter decides, as it does for the notice of too little cold.
  wave.confident = result.wave.confidence == BloomConfidence::ordinary &&
                   !is_under_chilled(kind.ask, timing.cold);
  wave.flowers = result.wave.flowers;
  wave.deeper_cm = kind.deeper_cm;
  wave.doubt = doubt_of(kind.bloom, *kind.ask.taxon, result, kind.deeper_cm);
  timing.treatment = treatment_of(kind, start);
  wave.observed = ever_observed(*kind.ask.taxon, timing.treatment);
  timing.blasted = result.wave.blasted;
  timing.shoots = result.wave.shoots;
}

}  // namespace

SeasonView PotSeason::view() const {
  return {season, hemisphere, &winters[normal], &winters[mild], &winters[cold]};
}

PotSeason pot_season(const PlaceSeason& place_season, const PotThermal& pot) {
  PotSeason season;
  season.season = place_season.season;
  season.hemisphere = place_season.hemisphere;
  season.normal = place_season.normal;
  season.mild = place_season.mild;
  season.cold = place_season.cold;
  season.recorded = place_season.recorded;
  for (const Winter& winter : place_season.winters) {
    season.winters.push_back(pot_winter(winter, pot, place_season.exposure));
    season.bloom.push_back(bloom_season(season.winters.back()));
  }
  return season;
}

Day shoots_of(const TimedKind& kind, const PotSeason& season, Day planted, const ColdState& start) {
  return end_of_cold(wave_in(kind, season, season.normal, planted, start, usual_depth_cm));
}

KindTiming time_kind(const TimedKind& kind, const PotSeason& season, Day planted,
                     std::optional<double> weeks) {
  ColdAsk ask = kind.ask;
  if (weeks) ask.fixed_weeks = weeks;
  const SeasonView view = season.view();
  const std::array<const PotWinter*, 3> winters{view.normal, view.mild, view.cold};
  std::vector<const PotWinter*> recorded;
  if (season.recorded) {
    for (const PotWinter& winter : season.winters) recorded.push_back(&winter);
  }
  KindTiming timing;
  timing.cold = plan_cold(
      ask, planted, [&](const ColdState& start) { return shoots_of(kind, season, planted, start); },
      winters, recorded);
  forecast(kind, season, planted, timing);
  if (kind.ask.use != Use::forcing && is_hopeless(timing.cold)) timing.wave.flowers = false;
  return timing;
}

std::vector<Notice> timing_notices(const TimedKind& kind, const KindTiming& timing, Day planted) {
  std::vector<Notice> notices = cold_notices(kind.ask, timing.cold, planted);
  const Taxon& taxon = *kind.ask.taxon;
  const KindName name{taxon.id, taxon.name};
  if (!timing.wave.flowers) {
    if (timing.blasted) {
      notices.push_back({NoticeCode::buds_blast,
                         Severity::warning,
                         {name},
                         {{DetailName::highest, Celsius{kind.bloom.blast_c}}}});
    } else {
      notices.push_back({NoticeCode::no_flower, Severity::warning, {name}, {}});
    }
  } else if (!timing.wave.observed) {
    notices.push_back({NoticeCode::never_dated, Severity::note, {name}, {}});
    if (const auto how = said_of(timing.treatment))
      notices.back().details = {{DetailName::why, std::vector<Remark>{{*how}}}};
  }
  return notices;
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
