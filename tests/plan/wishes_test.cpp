#include "plan/wishes.hpp"

#include <catch2/catch.hpp>

#include "flowering/open_days.hpp"
#include "input/judged_pot_file.hpp"
#include "input/pot_file_writer.hpp"
#include "plan/terrace_fixture.hpp"

namespace bulbwright {
namespace {

using namespace terrace;

void check_same_times(const Plan& a, const Plan& b) {
  CHECK(a.plant == b.plant);
  REQUIRE(a.waves.size() == b.waves.size());
  for (std::size_t i = 0; i < a.waves.size(); ++i) {
    CHECK(a.waves[i].taxon == b.waves[i].taxon);
    CHECK(a.waves[i].peak == b.waves[i].peak);
    CHECK(a.cold[i].storage_weeks == b.cold[i].storage_weeks);
  }
}

TEST_CASE("a plan for a wanted day is the ordinary plan of its settled request", "[settled][law]") {
  const PlaceSeason place_season = setting_of("9b");
  Bench bench{place_season};
  Request request = terrace_pot();
  CHECK_FALSE(has_wish(request));
  request.flower = DayWindow{Day{2027, 3, 25}, Day{2027, 3, 25}};
  REQUIRE(has_wish(request));
  const Plan plan = make_plan(request, bench.context());
  REQUIRE(plan.wanted);
  CHECK_FALSE(plan.plant_given);
  const Settled settled = settle(make_case(request, bench.context()), bench.context());
  CHECK_FALSE(has_wish(settled.pot_case.request));
  check_same_times(make_plan(settled.pot_case.request, bench.context()), plan);
  CHECK(day_of_most_flower(plan.waves) == plan.wanted->predicted);
  CHECK(waves_open(plan.waves, Day{2027, 3, 25}) == plan.wanted->open);
}

TEST_CASE("a settled request survives being written to a pot file", "[settled][law]") {
  const PlaceSeason place_season = setting_of("9b");
  Bench bench{place_season};
  Request wanted = terrace_pot();
  wanted.flower = DayWindow{Day{2027, 3, 25}, Day{2027, 3, 25}};
  Request spread = terrace_pot();
  spread.spread = true;
  spread.order = LayerOrder::by_flowering;
  int fixed_weeks = 0;
  for (Request request : {wanted, spread}) {
    request.place = PlaceRequest{};
    request.place->zone = "9b";
    const Settled settled = settle(make_case(request, bench.context()), bench.context());
    for (const LayerRequest& layer : settled.pot_case.request.layers)
      fixed_weeks += layer.parts[0].storage_weeks ? 1 : 0;
    const Request read =
        input::read_pot_file(input::write_pot_file(settled.pot_case.request), "settled.json")
            .request;
    check_same_times(make_plan(read, bench.context()), make_plan(request, bench.context()));
  }
  CHECK(fixed_weeks > 0);  // else the key that carries them was not tried
}

TEST_CASE("layers by flowering lie latest lowest whatever the list", "[settled]") {
  const PlaceSeason place_season = setting_of("7a");
  Bench bench{place_season};
  Request upside_down = terrace_pot({"crocus-large", "narcissus-large-cupped", "tulip-triumph"});
  const Plan as_listed = make_plan(upside_down, bench.context());
  CHECK(as_listed.waves.front().taxon == "crocus-large");
  upside_down.order = LayerOrder::by_flowering;
  const Plan plan = make_plan(upside_down, bench.context());
  REQUIRE(plan.waves.size() == 3);
  CHECK(plan.waves.front().taxon == "tulip-triumph");
  CHECK(plan.waves.back().taxon == "crocus-large");
  CHECK(plan.layers.front().bulbs.front().taxon == "tulip-triumph");
  CHECK(plan.layers.front().depth > plan.layers.back().depth);
  CHECK(plan.plant == as_listed.plant);
  for (std::size_t i = 1; i < plan.waves.size(); ++i)
    CHECK(plan.waves[i - 1].peak >= plan.waves[i].peak);
  for (const Notice& notice : plan.notices)
    CHECK(notice.code != NoticeCode::flowers_before_layer_above);
}

TEST_CASE("a wanted day is found for the layers in the order that they get", "[settled][law]") {
  const PlaceSeason place_season = setting_of("7a");
  Bench bench{place_season};
  Request request = terrace_pot({"crocus-large", "narcissus-large-cupped", "tulip-triumph"});
  request.order = LayerOrder::by_flowering;
  for (const Day day : {Day{2027, 4, 8}, Day{2027, 4, 24}}) {
    request.flower = DayWindow{day, day};
    const Plan plan = make_plan(request, bench.context());
    REQUIRE(plan.wanted);
    CHECK(plan.waves.front().taxon == "tulip-triumph");
    CHECK(day_of_most_flower(plan.waves) == plan.wanted->predicted);
    CHECK(waves_open(plan.waves, day) == plan.wanted->open);
  }
}

TEST_CASE("of a mixture the latest kind decides its place", "[settled]") {
  const PlaceSeason place_season = setting_of("7a");
  Bench bench{place_season};
  Request request = terrace_pot({"narcissus-large-cupped", "narcissus-cyclamineus"});
  request.layers[1].parts.push_back({"tulip-single-late", 1.0});
  request.order = LayerOrder::by_flowering;
  const Settled settled = settle(make_case(request, bench.context()), bench.context());
  CHECK(settled.pot_case.request.layers.front().parts.size() == 2);
}

TEST_CASE("an order that does not fit the pot is not taken", "[settled]") {
  // Crown imperials flower before late tulips but must lie deeper than a shallow pot has over them.
  const PlaceSeason place_season = setting_of("6b");
  Bench bench{place_season};
  bool seen = false;
  for (double height = 200.0; height <= 460.0 && !seen; height += 5.0) {
    Request request = terrace_pot({"fritillaria-imperialis", "tulip-single-late"});
    request.pot.height = Millimetres{height};
    request.order = LayerOrder::by_flowering;
    const Settled settled = settle(make_case(request, bench.context()), bench.context());
    for (const Notice& notice : settled.notices)
      seen = seen || notice.code == NoticeCode::order_kept;
    if (seen) {
      request.layers[1].listed_at = 1;
      CHECK(settled.pot_case.request.layers == request.layers);
      CHECK(make_plan(request, bench.context()).layers.size() == 2);
    }
  }
  CHECK(seen);
}

}  // namespace
}  // namespace bulbwright
