#include "season/season.hpp"

#include <algorithm>
#include <tuple>

#include "plan/needs.hpp"
#include "season/season_cautions.hpp"

namespace bulbwright {
namespace {

Refrigerator refrigerator_of(const std::vector<SeasonPot>& pots, const SeasonAsk& ask,
                             const SeasonContext& context) {
  Refrigerator refrigerator;
  refrigerator.capacity = ask.drawer;
  for (std::size_t pot = 0; pot < pots.size(); ++pot) {
    if (!pots[pot].ok()) continue;
    for (Bag& bag : bags_of(*pots[pot].plan, pot, context.catalogue))
      refrigerator.bags.push_back(std::move(bag));
  }
  std::stable_sort(refrigerator.bags.begin(), refrigerator.bags.end(),
                   [](const Bag& a, const Bag& b) { return a.in < b.in; });
  const FridgeDays days{refrigerator.bags};
  refrigerator.weeks = days.weeks();
  refrigerator.most = days.most();
  if (!ask.drawer) return refrigerator;
  refrigerator.overflow = days.overflow(*ask.drawer);
  refrigerator.advice =
      advise_room(pots, refrigerator.bags, *ask.drawer, context.catalogue, context.replan);
  return refrigerator;
}

PotNeeds needs_of_pot(const SeasonPot& pot, const Catalogue& catalogue) {
  PotNeeds needs;
  if (pot.plan) needs = needs_of(*pot.plan, catalogue, pot.file);
  needs.ok = pot.ok();
  needs.pot = pot.name;
  needs.file = pot.file;
  return needs;
}

}  // namespace

bool Season::ok() const {
  return std::all_of(pots.begin(), pots.end(), [](const SeasonPot& pot) { return pot.ok(); });
}

Season make_season(std::vector<SeasonPot> pots, const SeasonAsk& ask,
                   const SeasonContext& context) {
  Season season;
  season.ask = ask;
  season.calendar = season_jobs(pots);
  season.refrigerator = refrigerator_of(pots, ask, context);
  season.days = shared_days(season.calendar, season.refrigerator.bags);
  season.weeks = shared_weeks(season.days);
  season.filling = filling_of(pots, ask.hours_a_day);
  season.flowers = flowers_of_all(pots);
  season.groups = flowers_of_groups(pots);
  std::vector<PotNeeds> needs;
  for (const SeasonPot& pot : pots) needs.push_back(needs_of_pot(pot, context.catalogue));
  season.shopping = shopping_list(std::move(needs), context.packs);
  season.cautions = season_cautions(pots, context.catalogue, context.cautions);
  season.pots = std::move(pots);
  return season;
}

}  // namespace bulbwright
