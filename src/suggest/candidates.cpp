#include "suggest/candidates.hpp"

#include <algorithm>

#include <fmt/core.h>

#include "scheduling/schedule.hpp"
#include "suggest/exclusion.hpp"

namespace bulbwright {
namespace {

/// A day under one point is a good day (schedule.hpp).
constexpr double good_day = 1.0;

/// What stops a kind on a day, in the order of judging.
enum class Hurdle { planting_day, storage, cold, window, none };
std::string words(Hurdle hurdle, const SuggestionWish& wish) {
  switch (hurdle) {
    case Hurdle::planting_day:
      return "no good planting day in this pot and winter";
    case Hurdle::storage:
      return "would have to be chilled potted, or longer than it takes";
    case Hurdle::cold:
      return wish.no_storage ? "too little cold without a refrigerator"
                             : "too little cold in a mild winter";
    case Hurdle::window:
      return fmt::format("not in flower from {} to {}", to_words(wish.window.first),
                         to_words(wish.window.last));
    case Hurdle::none:
      break;
  }
  return {};
}

/// Storage that the kind takes dry and the bulbs' days allow; fixed weeks are not shortened by the
/// planner, so they are judged here.
bool storage_feasible(const ColdAsk& ask, const TaxonCold& cold, Day planted) {
  if (cold.storage_weeks <= 0.0) return planted >= ask.available;
  return ask.taxon->cold_form == ColdForm::dry_ok && *cold.storage_start >= ask.available &&
         cold.storage_weeks <= storage_limit(*ask.taxon, ask.use, ask.already_weeks).most + 1e-9;
}

Hurdle judge_day(Candidate& candidate, const PotSeason& season, const SuggestionWish& wish,
                 std::size_t index, Day day, double cost) {
  const KindTiming timing = time_kind(candidate.kind, season, day);
  const TaxonCold& cold = timing.cold.cold;
  if (!storage_feasible(candidate.kind.ask, cold, day)) return Hurdle::storage;
  if (rounded(cold.chance_least_met, 0.01) < least_chance || !timing.wave.confident ||
      !timing.wave.flowers)
    return Hurdle::cold;
  if (timing.wave.last < wish.window.first || timing.wave.first > wish.window.last)
    return Hurdle::window;
  candidate.days.set(index);
  candidate.planted[index] = {timing.wave.first, timing.wave.peak, timing.wave.last,
                              cold.storage_weeks, cost};
  return Hurdle::none;
}

/// Fills in the days; returns the highest hurdle that stopped the best day.
Hurdle fill_days(Candidate& candidate, const PotSeason& season, const SuggestionWish& wish) {
  const std::vector<ScheduledKind> scheduled = scheduled_kinds({&candidate.kind, 1}, season);
  const std::vector<DayCost> costs = planting_costs(scheduled.front(), season.view());
  const Day first = planting_season(season.season, season.hemisphere).first;
  candidate.planted.resize(costs.size());
  Hurdle highest = Hurdle::planting_day;
  for (std::size_t i = 0; i < costs.size() && i < most_planting_days; ++i) {
    const double cost = rounded(costs[i].total(), 0.01);
    if (cost >= good_day) continue;
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

Candidates find_candidates(const PotCase& all, const SuggestionWish& wish) {
  Candidates result;
  result.first_day = planting_season(all.season.season, all.season.hemisphere).first;
  for (std::size_t i = 0; i < all.kinds.size(); ++i) {
    const Taxon& taxon = *all.kinds[i].ask.taxon;
    std::string reason = exclusion_of(taxon, all.request.pot, wish);
    Candidate candidate{all.kinds[i], all.layers[i].kinds.front().height, {}, {}};
    if (reason.empty()) reason = words(fill_days(candidate, all.season, wish), wish);
    if (reason.empty()) {
      result.kinds.push_back(std::move(candidate));
    } else {
      result.left_out.push_back({taxon.id, taxon.name, std::move(reason)});
    }
  }
  return result;
}

}  // namespace bulbwright
