// What a plan says in one place it does not deny in another: every station, kinds in turn.
// BULBWRIGHT_ALL=1 in the environment plans all kinds at all stations.
#include <algorithm>
#include <cstdlib>
#include <map>

#include <catch2/catch.hpp>

#include "plan/planner.hpp"
#include "plan/world_fixture.hpp"
#include "scheduling/schedule.hpp"

using namespace bulbwright;
using fixture::world;

namespace {

bool says(const Plan& plan, NoticeCode code) {
  return std::ranges::any_of(plan.notices, [&](const Notice& n) { return n.code == code; });
}

std::optional<Day> day_of(const Plan& plan, Task task) {
  for (const PlannedDate& date : plan.dates) {
    if (date.task == task) return date.date;
  }
  return std::nullopt;
}

/// What contradicts what in the plan of one kind, in words; nothing where nothing does.
std::vector<std::string> contradictions(const Plan& plan, const Place& place, const Taxon& taxon,
                                        const PotSeason& season) {
  using enum NoticeCode;
  std::vector<std::string> found;
  const TaxonCold& cold = plan.cold.front();
  const bool stored = cold.storage_weeks > 0.0;
  TimedKind kind;
  kind.ask.taxon = &taxon;
  kind.bloom = world().blooms.of(taxon);
  kind.ask.available = earliest_bulbs(2026, season.hemisphere);
  if (stored) {
    const KindTiming none = time_kind(kind, season, plan.plant, 0.0);
    if (!is_under_chilled(kind.ask, none.cold) && none.cold.cold.lacking_weeks <= 0.5)
      found.emplace_back("refrigerator where natural cold suffices");
    // Nobody refrigerates for pots out of doors in zones 3 to 7. common practice
    if (annual_low(place) < zone_bounds("8a").low) found.emplace_back("refrigerator in zone 7");
  }
  if (taxon.outdoor_cold_weeks.low <= 0.0 && stored)
    found.emplace_back("refrigerator for a kind that needs none");
  if (says(plan, enough_winter) &&
      (stored || says(plan, under_chilled) || says(plan, less_than_recommended) ||
       says(plan, storage_shortened) || says(plan, no_flower))) {
    found.emplace_back("all the cold, and yet too little");
  }
  if (says(plan, storage_shortened)) found.emplace_back("the day chosen leaves too few weeks");
  const PotWinter& normal = *season.view().normal;
  if (is_frozen(normal, plan.plant)) found.emplace_back("planted into frozen mix");
  if (says(plan, mix_warm) || says(plan, mix_too_warm)) {
    const DayWindow days = planting_season(2026, season.hemisphere);
    double coolest = 99.0;
    for (Day day = days.first; day <= days.last; ++day)
      coolest = std::min(coolest, mix_at_planting(normal, day).value());
    if (coolest < taxon.soil_max_c.value - 2.0) found.emplace_back("warm mix where it cools later");
  }
  const std::optional<Day> order = day_of(plan, Task::order_by);
  const Day harvest = season.hemisphere == Hemisphere::north ? Day{2026, 6, 15} : Day{2025, 12, 15};
  if (!order || *order < harvest) found.emplace_back("ordered before the harvest");
  const std::optional<Day> arrive = day_of(plan, Task::bulbs_arrive);
  if (!arrive || *arrive < kind.ask.available) found.emplace_back("in the house before they come");
  const PlannedWave& wave = plan.waves.front();
  // Buds of tulips are hurt below -1.7 to -2.2 degC (nola.com, 2017, of potted bulbs).
  if (plan.ok && wave.flowers && normal.at(wave.first).air_mean_c < -2.0)
    found.emplace_back("a flower in frost");
  if (plan.ok != !std::ranges::any_of(plan.notices, [](const Notice& n) {
        return n.severity == Severity::refusal;
      })) {
    found.emplace_back("refused and yet said to be done");
  }
  return found;
}

}  // namespace

TEST_CASE("no plan contradicts itself", "[planner][law]") {
  const auto& taxa = world().catalogue.taxa();
  const bool all = std::getenv("BULBWRIGHT_ALL") != nullptr;
  const std::size_t at_each = all ? taxa.size() : 3;
  std::map<std::string, int> broken;
  std::map<std::string, std::string> example;
  int plans = 0;
  for (std::size_t s = 0; s < world().places.places().size(); ++s) {
    const Place& place = world().places.places()[s];
    const PlaceSeason place_season = season_at_place(place, 2026, Exposure::open);
    Request request;
    request.pot.top = LengthPair{380_mm, 380_mm, false};
    request.pot.base = LengthPair{290_mm, 290_mm, false};
    request.pot.height = 360_mm;
    const PotSeason season = pot_season(place_season, pot_thermal(make_pot(request.pot)));
    for (std::size_t k = 0; k < at_each; ++k) {
      const Taxon& taxon = taxa[all ? k : (s * 7 + k * 17) % taxa.size()];
      LayerRequest layer;
      layer.parts = {{taxon.id, 1.0}};
      request.layers = {layer};
      const Plan plan = make_plan(request, {world().catalogue, world().blooms, place_season,
                                            Effort::quick, world().packings});
      ++plans;
      for (const std::string& what : contradictions(plan, place, taxon, season)) {
        ++broken[what];
        example.emplace(what, place.name + ", " + taxon.id + ", " + to_iso(plan.plant));
      }
    }
  }
  CHECK(plans >= 1000);
  for (const auto& [what, count] : broken) {
    FAIL_CHECK(count << " of " << plans << " plans: " << what << "; first at " << example[what]);
  }
}
