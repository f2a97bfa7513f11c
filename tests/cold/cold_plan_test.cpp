#include "cold/cold_plan.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <catch2/catch.hpp>

#include "flowering/pot_season_fixture.hpp"

using namespace bulbwright;
using fixture::kind_of;
using fixture::steady_season;

namespace {

/// Noses a fixed number of days after planting: the arithmetic alone.
ColdPlan planned(const ColdAsk& ask, const PotSeason& season, Day planted, int days_to_shoots) {
  const SeasonView view = season.view();
  const std::array<const PotWinter*, 3> winters{view.normal, view.mild, view.cold};
  return plan_cold(
      ask, planted, [&](const ColdState&) { return planted + days_to_shoots; }, winters);
}

bool says(const std::vector<Notice>& notices, NoticeCode code) {
  return std::any_of(notices.begin(), notices.end(),
                     [&](const Notice& n) { return n.code == code; });
}

const Day january{2027, 1, 8};

}  // namespace

// A mix at 5 degC gives full cold: ten weeks to the noses are ten cold weeks.
TEST_CASE("natural cold is the weeks from planting to the noses", "[cold_plan]") {
  const PotSeason season = steady_season(5.0, 5.0, 5.0);
  const ColdPlan plan = planned(kind_of("tulip-triumph").ask, season, january, 70);
  CHECK(plan.cold.natural.normal == Approx(10.0).margin(0.01));
  // Recommended outdoors: 11 weeks. One is left to the refrigerator.
  CHECK(plan.cold.storage_weeks == 1.0);
  CHECK(*plan.cold.storage_start == january - 7);
  CHECK(plan.cold.missing_weeks == Approx(0.0).margin(0.01));
}

// A normal winter of ten weeks and a mild one of none: 1.28 deviations below (one winter in ten)
// are no weeks at all, so the least of 8 has to come from the store. A bulb frozen in has had its
// cold.
TEST_CASE("the least is seen to in nine winters of ten, and frost takes no cold away",
          "[cold_plan]") {
  const ColdAsk ask = kind_of("tulip-triumph").ask;
  const ColdPlan mild = planned(ask, steady_season(5.0, 15.0, 5.0), january, 70);
  const ColdPlan frozen = planned(ask, steady_season(5.0, 5.0, -12.0), january, 70);
  CHECK(mild.cold.storage_weeks == 8.0);
  CHECK(frozen.cold.storage_weeks == 1.0);
  const ColdPlan arctic = planned(ask, steady_season(-12.0, -12.0, -12.0), january, 80);
  CHECK(arctic.cold.storage_weeks == 0.0);
}

TEST_CASE("kinds that are not chilled by custom get what the least lacks, no more", "[cold_plan]") {
  const ColdAsk ask = kind_of("narcissus-large-cupped").ask;
  const ColdPlan enough = planned(ask, steady_season(5.0, 5.0, 5.0), january, 21);
  CHECK(enough.cold.storage_weeks == 0.0);
  CHECK(helpful_weeks(ask, enough) > 0.0);
  CHECK(says(cold_notices(ask, enough, january), NoticeCode::weeks_would_help));
  const ColdPlan lacks = planned(ask, steady_season(15.0, 15.0, 15.0), january, 70);
  CHECK(lacks.cold.storage_weeks == 2.0);
}

TEST_CASE("tulips that wait for New Year wait in the refrigerator", "[cold_plan]") {
  ColdAsk ask = kind_of("tulip-triumph").ask;
  ask.late_from = late_planting_from(2026, Hemisphere::north, Celsius{-8.0});
  CHECK(planned(ask, steady_season(5.0, 5.0, 5.0), january, 70).cold.storage_weeks == 8.0);
  CHECK(planned(ask, steady_season(5.0, 5.0, 5.0), Day{2026, 12, 1}, 70).cold.storage_weeks == 1.0);
  CHECK_FALSE(late_planting_from(2026, Hemisphere::north, Celsius{-13.0}));
}

TEST_CASE("what the bulbs came with counts toward need and limit", "[cold_plan]") {
  ColdAsk ask = kind_of("tulip-triumph").ask;
  const PotSeason warm = steady_season(15.0, 15.0, 15.0);
  const double fresh = planned(ask, warm, january, 70).cold.storage_weeks;
  ask.already_weeks = 4.0;
  CHECK(planned(ask, warm, january, 70).cold.storage_weeks == fresh - 4.0);
}

TEST_CASE("kinds that are never refrigerated get no storage", "[cold_plan]") {
  const PotSeason warm = steady_season(15.0, 15.0, 15.0);
  for (const Taxon& taxon : fixture::catalogue().taxa()) {
    if (taxon.cold_form != ColdForm::none) continue;
    CAPTURE(taxon.id);
    CHECK(planned(kind_of(taxon.id.c_str()).ask, warm, january, 70).cold.storage_weeks == 0.0);
  }
}

TEST_CASE("storage never passes what a kind takes nor the days there are", "[cold_plan][law]") {
  const PotSeason warm = steady_season(15.0, 16.0, 14.0);
  for (const Taxon& taxon : fixture::catalogue().taxa()) {
    for (const int days : {0, 6, 7, 30, 60, 115, 160}) {
      const ColdAsk ask = kind_of(taxon.id.c_str()).ask;
      const ColdPlan plan = planned(ask, warm, ask.available + days, 60);
      CAPTURE(taxon.id, days);
      CHECK(plan.cold.storage_weeks <= storage_limit(taxon, Use::outdoors, 0.0).most);
      CHECK(plan.cold.storage_weeks * 7.0 <= days);
      CHECK((plan.cold.chilled_in_pot ==
             (taxon.cold_form == ColdForm::moist_only && plan.cold.storage_weeks > 0)));
    }
  }
}

TEST_CASE("too little cold is said with the chance that the least is reached", "[cold_plan]") {
  ColdAsk ask = kind_of("tulip-triumph").ask;
  ask.fixed_weeks = 0.0;
  const ColdPlan plan = planned(ask, steady_season(15.0, 16.0, 14.0), january, 60);
  CHECK(is_under_chilled(ask, plan));
  CHECK(plan.cold.chance_least_met < 0.05);
  CHECK(says(cold_notices(ask, plan, january), NoticeCode::under_chilled));
}

// Ten weeks in the normal and the hard winter, five in the mild one: eight are there within 0.4 of
// a deviation on the mild side, 0.1554 of a normal distribution, and in all winters on the hard
// side.
TEST_CASE("the chance of the least is that of winters about the normal one", "[cold_plan][law]") {
  ColdAsk ask = kind_of("tulip-triumph").ask;
  ask.fixed_weeks = 0.0;
  const ColdPlan mild = planned(ask, steady_season(5.0, 11.5, 5.0), january, 70);
  REQUIRE(mild.cold.need.least == 8.0);
  CHECK(mild.cold.chance_least_met == Approx(0.66).margin(0.01));
  const ColdPlan hard = planned(ask, steady_season(5.0, 11.5, -20.0), january, 70);
  CHECK(hard.cold.chance_least_met == mild.cold.chance_least_met);
}

TEST_CASE("recorded winters give the chance as their share", "[cold_plan]") {
  ColdAsk ask = kind_of("tulip-triumph").ask;
  ask.fixed_weeks = 0.0;
  const PotSeason a = steady_season(5.0, 11.5, 3.0), b = steady_season(12.5, 6.0, 4.0);
  std::vector<const PotWinter*> recorded;
  for (const PotSeason* season : {&a, &b}) {
    for (const PotWinter& winter : season->winters) recorded.push_back(&winter);
  }
  const SeasonView view = a.view();
  const std::array<const PotWinter*, 3> three{view.normal, view.mild, view.cold};
  const ColdPlan plan = plan_cold(
      ask, january, [](const ColdState&) { return january + 70; }, three, recorded);
  CHECK(plan.cold.chance_least_met == Approx(4.0 / 6.0).margin(0.005));
}

TEST_CASE("more weeks of storage never leave more cold missing", "[cold_plan][law]") {
  const PotSeason season = steady_season(11.0, 12.0, 10.0);
  ColdAsk ask = kind_of("narcissus-large-cupped").ask;
  double before = 100.0;
  for (int weeks = 0; weeks <= 8; ++weeks) {
    ask.fixed_weeks = weeks;
    const double missing = planned(ask, season, january, 60).cold.missing_weeks;
    CHECK(missing <= before + 1e-9);
    before = missing;
  }
}

// Bulbs sold precooled are planted at once, or stay in the refrigerator. common practice
TEST_CASE("bulbs that came with cold stay cold to the hour of planting, or lose some",
          "[cold_plan]") {
  const PotSeason season = steady_season(11.0, 12.0, 10.0);
  ColdAsk ask = kind_of("tulip-triumph").ask;
  ask.already_weeks = 8.0;
  ask.received = true;
  ask.available = january - 21;
  CHECK(planned(ask, season, january, 60).cold.storage_weeks == 3.0);
  CHECK(at_planting(ask, january, 3.0).weeks().value() == Approx(11.0));
  // Three weeks on a shelf: ten days' worth of cold is loose, and halves every three days.
  const double kept = at_planting(ask, january, 0.0).weeks().value();
  CHECK(kept == Approx(8.0 - 240.0 / 168.0 * (1.0 - std::exp2(-7.0))).margin(1e-6));
  ask.available = january;
  CHECK(at_planting(ask, january, 0.0).weeks().value() == Approx(8.0));
  ask.available = january - 70;
  CHECK(says(cold_notices(ask, planned(ask, season, january, 60), january),
             NoticeCode::storage_long));
}

TEST_CASE("precooled bulbs are offered where the days are too few", "[cold_plan]") {
  const PotSeason season = steady_season(11.0, 12.0, 10.0);
  ColdAsk ask = kind_of("tulip-triumph").ask;
  ask.available = january - 14;
  CHECK(says(cold_notices(ask, planned(ask, season, january, 60), january),
             NoticeCode::precooled_offered));
  ask.available = january - 90;
  CHECK_FALSE(says(cold_notices(ask, planned(ask, season, january, 60), january),
                   NoticeCode::precooled_offered));
}

// Moe and Wickstrom, Physiologia Plantarum 28, 1973 (abstract): many tulips without a flower after
// 2 to 6 weeks of the 12 to 14 that do best.
TEST_CASE("no flowers are promised of bulbs that no winter chills", "[cold_plan]") {
  ColdAsk ask = kind_of("tulip-triumph").ask;
  ask.fixed_weeks = 0.0;
  CHECK(is_hopeless(planned(ask, steady_season(15.0, 16.0, 14.5), january, 60)));
  ask.fixed_weeks = 8.0;
  CHECK_FALSE(is_hopeless(planned(ask, steady_season(15.0, 16.0, 14.5), january, 60)));
  ColdAsk freesia = kind_of("freesia").ask;
  CHECK_FALSE(is_hopeless(planned(freesia, steady_season(15.0, 16.0, 14.5), january, 60)));
}
