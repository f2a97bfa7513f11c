#include "suggest/candidates.hpp"

#include <algorithm>

#include "cold/hard_frost.hpp"
#include "scheduling/schedule.hpp"
#include "suggest/exclusion.hpp"

namespace bulbwright {
namespace {

/// What stops a kind on a day, in the order of judging.
enum class Hurdle { planting_day, storage, cold, window, none };
std::optional<Remark> remark_of(Hurdle hurdle, const SuggestionWish& wish) {
  using enum RemarkCode;
  switch (hurdle) {
    case Hurdle::planting_day:
      return Remark{no_planting_day};
    case Hurdle::storage:
      return Remark{chilled_too_long};
    case Hurdle::cold:
      return Remark{wish.no_storage ? cold_without_refrigerator : cold_in_mild_winter};
    case Hurdle::window:
      return Remark{not_in_flower, {}, {{DetailName::window, wish.window}}};
    case Hurdle::none:
      break;
  }
  return std::nullopt;
}

/// Points from which on no day is worth planting.
constexpr double passable_day = 2.5;

/// Storage that the kind takes dry and the bulbs' days allow; fixed weeks are not shortened by the
/// planner, so they are judged here.
bool storage_feasible(const ColdAsk& ask, const TaxonCold& cold, Day planted) {
  if (cold.storage_weeks <= 0.0) return planted >= ask.available;
  return ask.taxon->cold_form == ColdForm::dry_ok && *cold.storage_start >= ask.available &&
         cold.storage_weeks <= storage_limit(*ask.taxon, ask.use, ask.already_weeks).most + 1e-9;
}

/// What a kind does when planted on a day, and what stops it.
struct Judged {
  Hurdle hurdle = Hurdle::none;
  PlantedKind planted;
};

Judged judged(const TimedKind& kind, const PotSeason& season, const SuggestionWish& wish, Day day,
              double cost) {
  const KindTiming timing = time_kind(kind, season, day);
  const TaxonCold& cold = timing.cold.cold;
  const PlannedWave& wave = timing.wave;
  Judged result;
  result.planted = {wave.first, wave.peak, wave.last, cold.storage_weeks, cost};
  if (!storage_feasible(kind.ask, cold, day)) {
    result.hurdle = Hurdle::storage;
  } else if (rounded(cold.chance_least_met, 0.01) < least_chance || !wave.confident ||
             !wave.flowers) {
    result.hurdle = Hurdle::cold;
  } else if (wave.last < wish.window.first || wave.first > wish.window.last) {
    result.hurdle = Hurdle::window;
  }
  return result;
}

Hurdle judge_day(Candidate& candidate, const PotSeason& season, const SuggestionWish& wish,
                 std::size_t index, Day day, double cost) {
  const Judged found = judged(candidate.kind, season, wish, day, cost);
  if (found.hurdle != Hurdle::none) return found.hurdle;
  candidate.days.set(index);
  candidate.planted[index] = found.planted;
  return Hurdle::none;
}

/// Fills in the days; returns the highest hurdle that stopped the best day.
Hurdle fill_days(Candidate& candidate, const PotSeason& season, const SuggestionWish& wish) {
  const std::vector<ScheduledKind> scheduled = scheduled_kinds({&candidate.kind, 1}, season);
  const std::vector<DayCost> costs = planting_costs(scheduled.front(), season.view());
  const Day first = planting_season(season.season, season.hemisphere).first;
  candidate.planted.resize(costs.size());
  Hurdle highest = Hurdle::planting_day;
  // Where the mix never cools enough growers plant on the coolest days: what a plan would choose,
  // with its warning.
  double least = costs.front().total();
  for (const DayCost& cost : costs) least = std::min(least, cost.total());
  const double passable = least < passable_day ? std::max(good_day, least + 0.5) : good_day;
  for (std::size_t i = 0; i < costs.size() && i < most_planting_days; ++i) {
    const double cost = rounded(costs[i].total(), 0.01);
    if (cost >= passable) continue;
    const Day day = first + static_cast<int>(i);
    highest = std::max(highest, judge_day(candidate, season, wish, i, day, cost));
  }
  return candidate.days.any() ? Hurdle::none : highest;
}

}  // namespace

Request request_of_all(Request request, const SuggestionWish& wish, const Catalogue& catalogue) {
  request.layers.clear();
  for (const Taxon& taxon : catalogue.taxa()) {
    LayerRequest layer;
    layer.parts.push_back({taxon.id, 1.0});
    request.layers.push_back(std::move(layer));
  }
  if (wish.no_storage) request.storage.weeks = 0.0;
  return request;
}

Candidates find_candidates(const PotCase& all, const SuggestionWish& wish, Celsius lowest_mix) {
  Candidates result;
  result.first_day = planting_season(all.season.season, all.season.hemisphere).first;
  for (std::size_t i = 0; i < all.kinds.size(); ++i) {
    const Taxon& taxon = *all.kinds[i].ask.taxon;
    std::optional<Remark> reason = exclusion_of(taxon, all.request.pot, wish);
    if (!reason && frost_harm(taxon, lowest_mix) == FrostHarm::dies)
      reason = Remark{RemarkCode::killed_by_frost, {}, {{DetailName::lowest, lowest_mix}}};
    Candidate candidate{all.kinds[i], all.layers[i].kinds.front().height, {}, {}};
    if (!reason) reason = remark_of(fill_days(candidate, all.season, wish), wish);
    if (!reason) {
      result.kinds.push_back(std::move(candidate));
    } else {
      result.left_out.push_back({taxon.id, taxon.name, std::move(*reason)});
    }
  }
  return result;
}

PlantedDeeper planted_deeper(Day first_day, const PotSeason& season, const SuggestionWish& wish) {
  return [first_day, &season, &wish](const Candidate& candidate, std::size_t day,
                                     int deeper_cm) -> std::optional<PlantedKind> {
    if (deeper_cm == 0) return candidate.planted[day];
    TimedKind kind = candidate.kind;
    kind.deeper_cm = deeper_cm;
    const Judged found =
        judged(kind, season, wish, first_day + static_cast<int>(day), candidate.planted[day].cost);
    if (found.hurdle != Hurdle::none) return std::nullopt;
    return found.planted;
  };
}

}  // namespace bulbwright
