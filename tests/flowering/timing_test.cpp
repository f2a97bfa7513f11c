#include "flowering/timing.hpp"

#include <catch2/catch.hpp>

#include "flowering/pot_season_fixture.hpp"

using namespace bulbwright;
using fixture::kind_of;
using fixture::steady_season;

TEST_CASE("a kind timed alone is the kind timed in its pot", "[timing][law]") {
  const PotSeason season = steady_season(8.0, 9.5, 6.5);
  const std::vector<TimedKind> kinds{kind_of("tulip-triumph"), kind_of("muscari")};
  const Timing pot = time_pot(kinds, season, Day{2026, 12, 10});
  for (std::size_t i = 0; i < kinds.size(); ++i) {
    const KindTiming alone = time_kind(kinds[i], season, Day{2026, 12, 10});
    CHECK(alone.wave.first == pot.kinds[i].wave.first);
    CHECK(alone.cold.cold.storage_weeks == pot.kinds[i].cold.cold.storage_weeks);
  }
}

TEST_CASE("fixed weeks are kept and a forced pot is brought in after it has rooted", "[timing]") {
  const PotSeason season = steady_season(5.0, 5.0, 5.0);
  TimedKind kind = kind_of("hyacinth");
  CHECK(time_kind(kind, season, Day{2026, 12, 1}, 3.0).cold.cold.storage_weeks == 3.0);
  CHECK_FALSE(time_kind(kind, season, Day{2026, 12, 1}).bring_in);
  kind.ask.use = Use::forcing;
  const KindTiming forced = time_kind(kind, season, Day{2026, 12, 1}, 3.0);
  REQUIRE(forced.bring_in);
  CHECK(*forced.bring_in >= Day{2026, 12, 1} + rooting_out_days);
  CHECK(forced.wave.first > *forced.bring_in);
}

// Iowa State University Extension, 14 Sep 2011, and trade forcing sheets: forced bulbs flower two
// to four weeks after leaving the cold at 15 to 18 degC.
TEST_CASE("a forced tulip flowers two to five weeks after it is brought in",
          "[timing][published]") {
  const PotSeason season = steady_season(5.0, 5.0, 5.0);
  TimedKind kind = kind_of("tulip-triumph");
  kind.ask.use = Use::forcing;
  const KindTiming forced = time_kind(kind, season, Day{2026, 10, 1}, 0.0);
  REQUIRE(forced.bring_in);
  const int days = forced.wave.first - *forced.bring_in;
  CHECK(days >= 14);
  CHECK(days <= 35);
}
