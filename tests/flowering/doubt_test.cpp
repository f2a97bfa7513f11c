#include "flowering/doubt.hpp"

#include <cmath>

#include <catch2/catch.hpp>

#include "flowering/pot_season_fixture.hpp"

using namespace bulbwright;
using fixture::kind_of;
using fixture::steady_season;

namespace {

PlannedWave wave_of(const char* taxon, Day first, Day last, WaveDoubt doubt) {
  PlannedWave wave;
  wave.taxon = taxon;
  wave.first = first;
  wave.last = last;
  wave.doubt = doubt;
  return wave;
}

const Day march{2027, 3, 1};

/// A wave of ten days that opens so many days after 1 March.
PlannedWave ten_days(const char* taxon, int after, WaveDoubt doubt) {
  return wave_of(taxon, march + after, march + after + 9, doubt);
}

}  // namespace

TEST_CASE("the parts of a wave's doubt add up to its range", "[doubt][law]") {
  const PotSeason season = steady_season(8.0, 9.5, 6.5);
  for (const char* taxon : {"tulip-triumph", "narcissus-large-cupped", "muscari", "freesia"}) {
    for (const double deeper : {-3.0, 0.0, 8.0}) {
      TimedKind kind = kind_of(taxon);
      kind.deeper_cm = deeper;
      const PlannedWave wave = time_kind(kind, season, Day{2026, 11, 1}, 0.0).wave;
      REQUIRE(wave.flowers);
      const WaveDoubt& doubt = wave.doubt;
      const double sd = std::sqrt(doubt.winter * doubt.winter + doubt.garden * doubt.garden +
                                  doubt.kind * doubt.kind + doubt.storage * doubt.storage +
                                  doubt.depth * doubt.depth);
      INFO(taxon << " " << deeper);
      // Source: tables of the normal distribution: four fifths lie within 1.2816 deviations.
      CHECK(std::abs(1.2816 * sd - (wave.first - wave.earliest_first)) <= 0.51);
      CHECK((doubt.depth > 0.0) == (deeper > 0.0));
    }
  }
}

TEST_CASE("what is common to a pot drops out of the days between its waves", "[doubt]") {
  const PlannedWave a = ten_days("a", 0, {4.0, 7.0, 3.0, 0.0, 0.0});
  const PlannedWave b = ten_days("b", 20, {4.0, 90.0, 4.0, 0.0, 0.0});
  CHECK(doubt_between(a, b) == Approx(5.0));  // 3 and 4 of the kinds; the garden's 7 and 90 do not
  const PlannedWave later = ten_days("b", 20, {-8.0, 7.0, 4.0, 0.0, 0.0});
  CHECK(doubt_between(a, later) == Approx(13.0));  // a winter that moves them apart by 12, and 5
  CHECK(doubt_between(later, a) == Approx(13.0));
}

TEST_CASE("two layers of one kind are surer of each other than two kinds", "[doubt]") {
  const WaveDoubt doubt{4.0, 7.0, 3.0, 9.0, 0.0};
  CHECK(doubt_between(ten_days("a", 0, doubt), ten_days("a", 3, doubt)) ==
        Approx(layer_days * std::sqrt(2.0)));
  CHECK(doubt_between(ten_days("a", 0, doubt), ten_days("b", 3, doubt)) > 4.0);
  // The size of the depth's effect is unknown for both at once.
  WaveDoubt deep = doubt;
  deep.depth = 6.0;
  CHECK(doubt_between(ten_days("a", 0, doubt), ten_days("a", 3, deep)) ==
        Approx(std::hypot(6.0, layer_days * std::sqrt(2.0))));
  CHECK(doubt_between(ten_days("a", 0, deep), ten_days("a", 3, deep)) ==
        Approx(layer_days * std::sqrt(2.0)));
}

TEST_CASE("only one of two kinds refrigerated brings all that storage leaves open", "[doubt]") {
  const WaveDoubt stored{0.0, 8.0, 6.0, 10.0, 0.0}, dry{0.0, 8.0, 6.0, 0.0, 0.0};
  const double both = doubt_between(ten_days("a", 0, stored), ten_days("b", 0, stored));
  const double one = doubt_between(ten_days("a", 0, stored), ten_days("b", 0, dry));
  CHECK(one == Approx(std::sqrt(36.0 + 36.0 + 100.0)));
  CHECK(both == Approx(std::sqrt(36.0 + 36.0 + 36.0 + 36.0)));  // 6 / 10 of 10 each
}

// Source: tables of the normal distribution: 0.8413 lies below one deviation.
TEST_CASE("the chance of a gap follows the days between two waves", "[doubt]") {
  const WaveDoubt doubt{0.0, 7.0, 3.0, 0.0, 0.0}, other{0.0, 7.0, 4.0, 0.0, 0.0};
  const auto chance = [&](int gap_days) {
    return gap_chance(ten_days("a", 0, doubt), ten_days("b", 10 + gap_days, other));
  };
  // Half a day rounds to one: 5.5 days between are 5 days, one deviation, above it.
  CHECK((chance(5) + chance(6)) / 2 == Approx(0.8413).margin(0.003));
  CHECK(chance(0) < 0.5);
  CHECK(chance(1) > 0.5);
  for (int days = -30; days < 30; ++days) CHECK(chance(days) < chance(days + 1));
  CHECK(chance(-30) < 0.001);
  const WaveDoubt none;
  CHECK(gap_chance(ten_days("a", 0, none), ten_days("b", 11, none)) == 1.0);
  CHECK(gap_chance(ten_days("a", 0, none), ten_days("b", 10, none)) == 0.0);
}
