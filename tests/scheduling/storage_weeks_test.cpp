// A planting some days later never wants fewer weeks in the refrigerator, and a wider pot moves
// them by a week at most.
#include "scheduling/storage_weeks.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "plan/pot_case.hpp"
#include "plan/world_fixture.hpp"

using namespace bulbwright;
using fixture::world;

namespace {

const std::vector<std::string> stations{"Newport News", "Seattle",    "Arundel", "Atlanta",
                                        "Sacramento",   "San Diego",  "Wynyard", "De Bilt",
                                        "Melbourne",    "Chicago, I", "Dallas",  "Los Angeles"};

/// Weeks of one kind in pots of the same shape.
class WeeksOf {
 public:
  WeeksOf(const std::string& station, const char* taxon, double width_mm)
      : season_{season_at_place(world().places.find(station), 2026, Exposure::open)} {
    Request request;
    request.pot.top = LengthPair{Millimetres{width_mm}, Millimetres{width_mm}, false};
    request.pot.base = LengthPair{Millimetres{0.8 * width_mm}, Millimetres{0.8 * width_mm}, false};
    request.pot.height = Millimetres{0.92 * width_mm};
    LayerRequest layer;
    layer.parts = {{taxon, 1.0}};
    request.layers = {layer};
    pot_ = make_case(request,
                     {world().catalogue, world().blooms, season_, Effort::quick, world().packings});
  }
  [[nodiscard]] double planted(int days_after_first) const {
    const Day day = earliest_bulbs(2026, season_.hemisphere) + days_after_first;
    return time_kind(pot_.kinds.front(), pot_.season, day).cold.cold.storage_weeks;
  }

 private:
  PlaceSeason season_;
  PotCase pot_;
};

}  // namespace

TEST_CASE("a later planting wants no fewer weeks", "[schedule][weeks][law]") {
  int stored = 0;
  for (const std::string& station : stations) {
    for (const char* taxon :
         {"tulip-triumph", "tulip-single-late", "hyacinth", "crocus-large", "narcissus-trumpet",
          "muscari", "iris-reticulata", "galanthus", "allium-large"}) {
      const WeeksOf weeks{station, taxon, 380.0};
      double before = 0.0;
      for (int day = 0; day <= 135; day += 5) {
        const double here = weeks.planted(day);
        INFO(station << ' ' << taxon << ", day " << day);
        CHECK(here >= before);
        before = here;
        stored += here > 0.0 ? 1 : 0;
      }
    }
  }
  CHECK(stored >= 1000);
}

// Whole weeks have edges: a pot may stand on one, but never see-saw.
TEST_CASE("a wider pot moves the weeks seldom, and by one at most", "[schedule][weeks][law]") {
  int turns = 0;
  for (const std::string& station : stations) {
    for (const char* taxon : {"tulip-triumph", "hyacinth", "muscari"}) {
      double before = 0.0, last_move = 0.0;
      for (int step = 0; step <= 30; ++step) {
        const double here = WeeksOf{station, taxon, 260.0 + 10.0 * step}.planted(75);
        const double move = step == 0 ? 0.0 : here - before;
        INFO(station << ' ' << taxon << ", " << 260 + 10 * step << " mm");
        CHECK(std::abs(move) <= 1.0);
        turns += move * last_move < 0.0 ? 1 : 0;
        if (move != 0.0) last_move = move;
        before = here;
      }
    }
  }
  CHECK(turns <= 2);
}
