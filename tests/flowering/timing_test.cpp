#include "flowering/timing.hpp"

#include <string_view>

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
  CHECK(*forced.bring_in >= Day{2026, 12, 1} + forcing_rooting_days);
  CHECK(forced.wave.first > *forced.bring_in);
}

// Iowa State University Extension, 14 Sep 2011, and trade forcing sheets: forced bulbs flower two
// to four weeks after leaving the cold at 15 to 18 degC.
TEST_CASE("a forced pot is kept cold in the dark, whatever the winter outside", "[timing]") {
  TimedKind kind = kind_of("tulip-triumph");
  kind.ask.use = Use::forcing;
  const KindTiming mild = time_kind(kind, steady_season(12.0, 12.0, 12.0), Day{2026, 10, 1});
  const KindTiming hard = time_kind(kind, steady_season(-9.0, -9.0, -9.0), Day{2026, 10, 1});
  CHECK(mild.cold.cold.chilled_in_pot);
  CHECK(mild.cold.cold.storage_start == Day{2026, 10, 1});
  CHECK(mild.cold.cold.storage_end == mild.bring_in);
  CHECK(mild.wave.first == hard.wave.first);
  CHECK(mild.cold.cold.natural.normal == 0.0);
}

TEST_CASE("a forced tulip flowers two to five weeks after it is brought in",
          "[timing][published]") {
  const PotSeason season = steady_season(5.0, 5.0, 5.0);
  TimedKind kind = kind_of("tulip-triumph");
  kind.ask.use = Use::forcing;
  const KindTiming forced = time_kind(kind, season, Day{2026, 10, 1});
  REQUIRE(forced.bring_in);
  CHECK(*forced.bring_in == Day{2026, 10, 1} + 7 * 15);  // the weeks of the catalogue
  const int days = forced.wave.first - *forced.bring_in;
  CHECK(days >= 14);
  CHECK(days <= 35);
}

namespace {

/// First flowers of a kind planted on a day with weeks of cold that it came with and no more.
Day first_flower(const char* taxon, Day planted, double already_weeks) {
  static const PotSeason season = steady_season(9.0, 9.0, 9.0);
  TimedKind kind = kind_of(taxon);
  kind.ask.already_weeks = already_weeks;
  const KindTiming timing = time_kind(kind, season, planted, 0.0);
  REQUIRE(timing.wave.flowers);
  return timing.wave.first;
}

}  // namespace

// docs/bloom.md: what grows in the warm mix of early autumn is roots; bulbs that have had cold grow
// at once.
TEST_CASE("bulbs without cold wait for mid-autumn, chilled ones grow when planted", "[timing]") {
  const Day early{2026, 9, 16}, later{2026, 9, 26};
  for (const char* taxon : {"tulip-triumph", "narcissus-large-cupped", "muscari"}) {
    CAPTURE(taxon);
    for (const double little : {0.0, 0.9})
      CHECK(first_flower(taxon, early, little) == first_flower(taxon, later, little));
    for (const double enough : {1.1, 4.0})
      CHECK(first_flower(taxon, later, enough) - first_flower(taxon, early, enough) >= 3);
  }
}

// common practice: forcers give dry bulbs two to three weeks at 9 degC to root.
constexpr int rooted_within_days = 18;

TEST_CASE("days of rooting before mid-autumn are days of rooting done", "[timing][law]") {
  const Day mid_autumn{2026, 10, 15};
  for (const char* taxon : {"tulip-triumph", "narcissus-large-cupped", "muscari"}) {
    CAPTURE(taxon);
    const Day rooted = first_flower(taxon, mid_autumn - rooted_within_days, 0.0);
    const Day half = first_flower(taxon, mid_autumn - rooted_within_days / 2, 0.0);
    const Day dry = first_flower(taxon, mid_autumn, 0.0);
    CHECK(rooted == first_flower(taxon, mid_autumn - 2 * rooted_within_days, 0.0));
    CHECK(rooted <= half);
    CHECK(half <= dry);
    // A tulip without cold hardly grows in October, rooted or not.
    if (std::string_view{taxon} != "tulip-triumph") CHECK(rooted < dry);
    CHECK(dry - rooted <= rooted_within_days);
  }
}

TEST_CASE("a pot chilled planted has its roots, a bulb chilled dry makes them first", "[timing]") {
  const PotSeason season = steady_season(9.0, 9.0, 9.0);
  TimedKind kind = kind_of("fritillaria-meleagris");
  REQUIRE(kind.ask.taxon->cold_form == ColdForm::moist_only);
  Taxon dry = *kind.ask.taxon;
  dry.cold_form = ColdForm::dry_ok;
  const Day planted{2026, 12, 1};
  const Day in_pot = time_kind(kind, season, planted, 6.0).wave.first;
  const Day not_chilled = time_kind(kind, season, planted, 0.0).wave.first;
  kind.ask.taxon = &dry;
  const Day in_bag = time_kind(kind, season, planted, 6.0).wave.first;
  CHECK(in_pot < in_bag);
  CHECK(in_bag - in_pot <= rooted_within_days);
  CHECK(time_kind(kind, season, planted, 0.0).wave.first == not_chilled);  // no roots in either
}

// docs/bloom.md: dry bulbs root first, rooted ones start at once, those in growth have their noses
// up.
TEST_CASE("rooted bulbs flower before dry ones, bulbs in growth before rooted ones", "[timing]") {
  const PotSeason season = steady_season(7.0, 7.0, 7.0);
  for (const char* taxon : {"tulip-triumph", "narcissus-large-cupped", "muscari"}) {
    TimedKind kind = kind_of(taxon);
    kind.ask.already_weeks = 10.0;
    const auto first = [&](BulbState state) {
      kind.state = state;
      return time_kind(kind, season, Day{2027, 1, 5}, 0.0).wave.first;
    };
    CAPTURE(taxon);
    CHECK(first(BulbState::rooted) < first(BulbState::dry));
    CHECK(first(BulbState::in_growth) < first(BulbState::rooted));
  }
}

TEST_CASE("noses show a week before the flower, and not before planting", "[timing][law]") {
  // Hardly above freezing for the kind of least heat: what a thaw brings out flowers at once.
  for (const double t : {0.5, 2.0, 5.0, 12.0}) {
    const PotSeason season = steady_season(t, t, t);
    for (const char* taxon : {"galanthus", "crocus-species", "tulip-triumph"}) {
      for (const Day planted : {Day{2026, 10, 1}, Day{2026, 12, 20}}) {
        const KindTiming timing = time_kind(kind_of(taxon), season, planted, 0.0);
        if (!timing.wave.flowers) continue;
        CAPTURE(t, taxon);
        CHECK(timing.shoots > planted);
        if (timing.wave.first - planted > least_shoots_lead_days)
          CHECK(timing.wave.first - timing.shoots >= least_shoots_lead_days);
      }
    }
  }
}
