#include "cold/cold_plan.hpp"

#include <algorithm>
#include <array>

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

TEST_CASE("the poorest of the three winters decides, be it mild or hard", "[cold_plan]") {
  const ColdAsk ask = kind_of("tulip-triumph").ask;
  const ColdPlan mild = planned(ask, steady_season(5.0, 20.0, 5.0), january, 70);
  const ColdPlan frozen = planned(ask, steady_season(5.0, 5.0, -12.0), january, 70);
  CHECK(mild.cold.storage_weeks == 10.0);
  CHECK(frozen.cold.storage_weeks >= 9.0);
  CHECK(mild.limit == ColdPlan::Limit::kind);
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
  CHECK(is_under_chilled(plan));
  CHECK(plan.cold.chance_least_met < 0.05);
  CHECK(says(cold_notices(ask, plan, january), NoticeCode::under_chilled));
}

// Ten, five and five weeks of natural cold: each side of the normal winter is five weeks a standard
// deviation, so 8 weeks are there within 0.4 of it: 2 x 0.1554 of a normal distribution.
TEST_CASE("both mild and hard winters can fall short of the least cold", "[cold_plan][law]") {
  ColdAsk ask = kind_of("tulip-triumph").ask;
  ask.fixed_weeks = 0.0;
  const ColdPlan both = planned(ask, steady_season(5.0, 11.5, -1.0), january, 70);
  CAPTURE(both.cold.natural.normal, both.cold.natural.mild, both.cold.natural.cold);
  REQUIRE(both.cold.need.least == 8.0);
  CHECK(both.cold.chance_least_met == Approx(0.31));
  // Hard winters as good as the normal one: its half of them all reach the least.
  const ColdPlan mild = planned(ask, steady_season(5.0, 11.5, 5.0), january, 70);
  CHECK(mild.cold.chance_least_met == Approx(0.66).margin(0.01));
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
