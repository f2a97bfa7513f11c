#include "plan/planner.hpp"

#include <algorithm>
#include <type_traits>

#include <catch2/catch.hpp>

#include "cold/cold_plan.hpp"
#include "plan/world_fixture.hpp"

using namespace bulbwright;
using fixture::world;

namespace {

Request request_of(const std::vector<std::string>& taxa) {
  Request request;
  request.pot.top = LengthPair{380_mm, 380_mm, false};
  request.pot.base = LengthPair{290_mm, 290_mm, false};
  request.pot.height = 360_mm;
  for (const std::string& taxon : taxa) {
    LayerRequest layer;
    layer.parts = {{taxon, 1.0}};
    request.layers.push_back(layer);
  }
  return request;
}

Plan plan_at(const Place& place, Request request) {
  const PlaceSeason place_season = season_at_place(place, 2026, Exposure::open);
  return make_plan(
      request, {world().catalogue, world().blooms, place_season, Effort::quick, world().packings});
}

const TaxonCold& cold_of(const Plan& plan, const std::string& taxon) {
  return *std::find_if(plan.cold.begin(), plan.cold.end(),
                       [&](const TaxonCold& cold) { return cold.taxon == taxon; });
}

bool says(const Plan& plan, NoticeCode code) {
  return std::any_of(plan.notices.begin(), plan.notices.end(),
                     [&](const Notice& n) { return n.code == code; });
}

const std::vector<std::string> spring{"tulip-triumph", "narcissus-large-cupped", "crocus-large"};

}  // namespace

// Texas A&M AgriLife Today (M. Arnold), spring bulbs in Texas: 6 to 10 weeks; Californian advice up
// to 12. "Tulips in zone 8 and warmer want 8 to 12 weeks of refrigeration" (common practice) holds
// for the warm zones; a zone 8 on a cool coast chills bulbs by itself (temperature decides, not the
// zone).
// A context without one of its parts must not come about.
static_assert(!std::is_default_constructible_v<PlanContext>);

TEST_CASE("tulips in warm zones are refrigerated for eight to twelve weeks",
          "[planner][published]") {
  for (const char* zone : {"9b", "10a", "10b"}) {
    CAPTURE(zone);
    const Plan plan = plan_at(world().places.zone_profile(zone), request_of(spring));
    const TaxonCold& tulips = cold_of(plan, "tulip-triumph");
    CHECK(tulips.storage_weeks >= 8.0);
    CHECK(tulips.storage_weeks <= 12.0);
    REQUIRE(tulips.storage_start);
    CHECK(*tulips.storage_start >= Day{2026, 9, 15});
    CHECK(*tulips.storage_end == plan.plant);
  }
}

TEST_CASE("a cold place needs no refrigerator and says so", "[planner]") {
  const Plan plan = plan_at(world().places.zone_profile("6b"),
                            request_of({"tulip-triumph", "narcissus-large-cupped"}));
  CHECK(plan.ok);
  for (const TaxonCold& cold : plan.cold) CHECK(cold.storage_weeks == 0.0);
  CHECK(says(plan, NoticeCode::enough_winter));
  // Common practice: plant spring bulbs in autumn, once the soil has cooled, weeks before hard
  // frost.
  CHECK(plan.plant >= Day{2026, 9, 15});
  CHECK(plan.plant <= Day{2026, 11, 30});
}

TEST_CASE("a tropical place says that natural cold is none", "[planner]") {
  const Plan plan = plan_at(world().places.find("Singapore"), request_of({"tulip-triumph"}));
  CHECK(says(plan, NoticeCode::no_natural_cold));
  CHECK(cold_of(plan, "tulip-triumph").natural.normal == Approx(0.0).margin(0.01));
  CHECK(cold_of(plan, "tulip-triumph").storage_weeks >= 8.0);
}

TEST_CASE("storage, natural cold and what is missing add up", "[planner][law]") {
  for (const char* zone : {"5b", "7a", "8b", "9a", "9b", "10b"}) {
    for (const bool south : {false, true}) {
      if (south && std::string{zone} == "5b") continue;
      const Plan plan = plan_at(world().places.zone_profile(zone, south), request_of(spring));
      for (const TaxonCold& cold : plan.cold) {
        CAPTURE(zone, south, cold.taxon);
        CHECK(cold.storage_weeks >= 0.0);
        CHECK(cold.missing_weeks >= 0.0);
        CHECK(cold.storage_weeks == std::floor(cold.storage_weeks));
        CHECK(cold.chance_least_met >= 0.0);
        CHECK(cold.chance_least_met <= 1.0);
        if (cold.storage_start)
          CHECK(plan.plant - *cold.storage_start == static_cast<int>(cold.storage_weeks * 7));
      }
      for (const PlannedWave& wave : plan.waves) {
        CHECK(wave.earliest_first <= wave.first);
        CHECK(wave.first <= wave.peak);
        CHECK(wave.peak <= wave.last);
        CHECK(wave.last <= wave.latest_last);
        CHECK(wave.first > plan.plant);
      }
      for (std::size_t i = 1; i < plan.dates.size(); ++i)
        CHECK(plan.dates[i - 1].date <= plan.dates[i].date);
    }
  }
}

TEST_CASE("weeks of storage that cannot be are refused with the nearest day", "[planner]") {
  Request request = request_of({"tulip-triumph"});
  request.plant = Day{2026, 11, 1};
  request.storage.weeks = 10.0;
  const Plan early = plan_at(world().places.zone_profile("9b"), request);
  CHECK_FALSE(early.ok);
  CHECK(says(early, NoticeCode::storage_before_bulbs));
  request.plant = Day{2027, 2, 1};
  request.storage.weeks = 16.0;
  const Plan longer = plan_at(world().places.zone_profile("9b"), request);
  CHECK_FALSE(longer.ok);
  CHECK(says(longer, NoticeCode::storage_too_long));
  request.layers[0].parts[0].taxon = "freesia";
  CHECK(says(plan_at(world().places.zone_profile("9b"), request), NoticeCode::never_refrigerate));
}

TEST_CASE("no cold at all is told, with a wider range, never as a confident date", "[planner]") {
  Request request = request_of({"tulip-triumph"});
  request.plant = Day{2027, 1, 8};
  request.storage.weeks = 0.0;
  const Plan plan = plan_at(world().places.zone_profile("10b"), request);
  CHECK(says(plan, NoticeCode::under_chilled));
  REQUIRE(plan.waves.size() == 1);
  CHECK_FALSE(plan.waves[0].confident);
}

TEST_CASE("mix of last year's genus is refused for it", "[planner]") {
  Request request = request_of({"hyacinth"});
  request.pot.last_crop = "hyacinth";
  request.pot.used_mix = true;
  const Plan plan = plan_at(world().places.zone_profile("8a"), request);
  CHECK_FALSE(plan.ok);
  CHECK(says(plan, NoticeCode::used_mix));
}

TEST_CASE("the same request gives the same plan, with or without remembered packings",
          "[planner][law]") {
  const Place place = world().places.zone_profile("9b");
  const Plan first = plan_at(place, request_of(spring));
  PackingCache fresh;
  const PlaceSeason place_season = season_at_place(place, 2026, Exposure::open);
  const Request request = request_of(spring);
  const Plan second =
      make_plan(request, {world().catalogue, world().blooms, place_season, Effort::quick, fresh});
  REQUIRE(first.layers.size() == second.layers.size());
  for (std::size_t i = 0; i < first.layers.size(); ++i) {
    REQUIRE(first.layers[i].positions.size() == second.layers[i].positions.size());
    for (std::size_t k = 0; k < first.layers[i].positions.size(); ++k) {
      CHECK(first.layers[i].positions[k].x_mm == second.layers[i].positions[k].x_mm);
    }
  }
  CHECK(first.plant == second.plant);
}

TEST_CASE("a kind that will not flower has no days of flower anywhere in the plan", "[planner]") {
  Request request = request_of({"allium-large", "narcissus-tazetta-tender"});
  request.storage.weeks = 0.0;
  const Plan plan = plan_at(world().places.zone_profile("11b"), request);
  REQUIRE(plan.waves.size() == 2);
  REQUIRE_FALSE(plan.waves[0].flowers);  // nine weeks of cold at the least, and none there
  REQUIRE(plan.waves[1].flowers);
  CHECK(says(plan, NoticeCode::no_flower));
  CHECK(plan.display.last == plan.waves[1].last);
  for (const PlannedDate& date : plan.dates) {
    if (date.task == Task::flower || date.task == Task::after_flowering)
      CHECK(date.kinds.front().taxon == "narcissus-tazetta-tender");
  }
}

// Cavins and Dole, HortScience 37, 2002 (abstract): tulips planted deeper flower later, in every
// trial; as do those of Hagiladi et al., J. Amer. Soc. Hort. Sci. 117, 1992 (abstract).
TEST_CASE(
    "of three layers of one kind the deeper flowers later, with a wider range, and all want "
    "the same refrigerator",
    "[planner][law]") {
  for (const char* zone : {"6b", "8a", "9b"}) {
    for (const char* taxon : {"tulip-triumph", "crocus-large", "muscari"}) {
      Request deep = request_of({taxon, taxon, taxon});
      deep.pot.height = 460_mm;
      const Plan plan = plan_at(world().places.zone_profile(zone), deep);
      INFO(zone << " " << taxon);
      REQUIRE(plan.ok);
      CHECK(plan.waves[0].first >= plan.waves[1].first);
      CHECK(plan.waves[1].first >= plan.waves[2].first);
      CHECK(plan.waves[0].first > plan.waves[2].first);
      CHECK(plan.waves[0].first - plan.waves[2].first <= 21);  // a week a layer at the most
      const Plan one = plan_at(world().places.zone_profile(zone), request_of({taxon}));
      if (one.plant == plan.plant) {
        CHECK(one.waves[0].first < plan.waves[0].first);
        const auto before = [](const PlannedWave& wave) {
          return wave.first - wave.earliest_first;
        };
        CHECK(before(plan.waves[0]) >= before(one.waves[0]));
      }
      for (const TaxonCold& cold : plan.cold) {
        CHECK(cold.storage_weeks == plan.cold[0].storage_weeks);
        CHECK(cold.chance_least_met == plan.cold[0].chance_least_met);
      }
    }
  }
}
