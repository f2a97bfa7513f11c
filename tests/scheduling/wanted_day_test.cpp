#include "scheduling/wanted_day.hpp"

#include <cstdlib>
#include <set>

#include <catch2/catch.hpp>

#include "flowering/open_days.hpp"
#include "plan/planner.hpp"
#include "plan/terrace_fixture.hpp"
#include "report/notice_text.hpp"
#include "scheduling/schedule.hpp"

namespace bulbwright {
namespace {

using namespace terrace;

DayWindow one(Day day) {
  return {day, day};
}

std::vector<PlannedWave> forward(const std::vector<TimedKind>& kinds, const PotSeason& season,
                                 const WantedAnswer& answer) {
  std::vector<PlannedWave> waves;
  for (std::size_t i = 0; i < kinds.size(); ++i)
    waves.push_back(time_kind(kinds[i], season, answer.plant, answer.weeks[i]).wave);
  return waves;
}

TEST_CASE("the forward plan of the answer flowers when the answer says", "[wanted_day][law]") {
  const PotSeason season = season_of_zone("9b");
  const std::vector<TimedKind> kinds{kind_of("tulip-triumph"),
                                     kind_of("narcissus-large-cupped", 2)};
  for (Day wanted{2027, 1, 10}; wanted <= Day{2027, 5, 20}; wanted = wanted + 13) {
    INFO(to_iso(wanted));
    const WantedAnswer answer = find_wanted_day(kinds, season, one(wanted));
    const std::vector<PlannedWave> waves = forward(kinds, season, answer);
    CHECK(day_of_most_flower(waves) == answer.predicted);
    CHECK(answer.predicted - wanted == answer.days_off);
    CHECK(waves_open(waves, wanted) == answer.open);
    CHECK((answer.days_off != 0) == answer.limit.has_value());
  }
}

TEST_CASE("the answer holds in the south, for forcing and by recorded winters",
          "[wanted_day][law]") {
  const auto check = [](const std::vector<TimedKind>& kinds, const PotSeason& season, Day wanted) {
    const WantedAnswer answer = find_wanted_day(kinds, season, one(wanted));
    const std::vector<PlannedWave> waves = forward(kinds, season, answer);
    CHECK(day_of_most_flower(waves) == answer.predicted);
    CHECK(answer.predicted - wanted == answer.days_off);
    CHECK(waves_open(waves, wanted) == answer.open);
    return answer;
  };
  const PlaceSeason south = setting_of_site("Christchurch");
  REQUIRE(south.hemisphere == Hemisphere::south);
  const WantedAnswer september =
      check({kind_of("tulip-triumph", 1, Hemisphere::south)}, season_of(south), Day{2026, 9, 20});
  CHECK(september.plant >= Day{2026, 3, 15});
  CHECK(std::abs(september.days_off) <= wanted_tolerance_days);

  TimedKind forced = kind_of("tulip-triumph");
  forced.ask.use = Use::forcing;
  const WantedAnswer indoors = check({forced}, season_of_zone("6b"), Day{2027, 3, 1});
  const WantedAnswer outdoors =
      check({kind_of("tulip-triumph")}, season_of_zone("6b"), Day{2027, 3, 1});
  CHECK(std::abs(indoors.days_off) < std::abs(outdoors.days_off));

  PlaceSeason recorded = setting_of("9b");
  recorded.recorded = true;
  check({kind_of("tulip-triumph"), kind_of("crocus-large", 2)}, season_of(recorded),
        Day{2027, 3, 10});
}

TEST_CASE("every day that an ordinary plan can flower on is found back exactly",
          "[wanted_day][law]") {
  for (const char* zone : {"9b", "7a"}) {
    const PotSeason season = season_of_zone(zone);
    const std::vector<TimedKind> kinds{kind_of("tulip-triumph")};
    const PlantingChoice choice =
        choose_planting(scheduled_kinds(kinds, season), season.view(), std::nullopt);
    REQUIRE(choice.windows.front().days);
    const DayWindow good = *choice.windows.front().days;
    for (Day plant = good.first; plant <= good.last; plant = plant + 5) {
      INFO(zone << " planted on " << to_iso(plant));
      const Day peak = time_kind(kinds[0], season, plant).wave.peak;
      const WantedAnswer answer = find_wanted_day(kinds, season, one(peak));
      CHECK(answer.days_off == 0);
      CHECK(answer.met);
      CHECK(answer.predicted == peak);
    }
  }
}

/// Everything that find_wanted_day() promises for a day, written out as loops.
struct BruteForce {
  std::tuple<int, int, int, double, int> best{1000, 0, 0, 0.0, 0};
  Day plant;
};
BruteForce brute_force(const std::vector<TimedKind>& kinds, const PotSeason& season, Day wanted,
                       Day ordinary) {
  const PotWinter& normal = season.winters[season.normal];
  const DayWindow days = planting_season(season.season, season.hemisphere);
  std::optional<Day> frost;
  for (Day day = days.first; day <= normal.last() && !frost; ++day)
    if (normal.at(day).frozen_share > 0.5) frost = day;
  BruteForce result;
  for (Day day = days.first; day <= days.last; ++day) {
    if (frost && *frost - day < 14 && day > ordinary) continue;
    std::vector<std::vector<std::tuple<int, int, int, double>>> terms(kinds.size());
    for (std::size_t k = 0; k < kinds.size(); ++k) {
      const ColdAsk& ask = kinds[k].ask;
      const Taxon& taxon = *ask.taxon;
      const double mix = rounded(mix_at_planting(normal, day).value(), 0.1);
      const double usual_mix = rounded(mix_at_planting(normal, ordinary).value(), 0.1);
      if (mix > std::max(taxon.soil_max_c.high, usual_mix)) continue;
      const TaxonCold usual = time_kind(kinds[k], season, ordinary).cold.cold;
      std::set<double> weeks{time_kind(kinds[k], season, day).cold.cold.storage_weeks};
      const double most = std::min(
          {taxon.dry_cold_max_weeks.value, taxon.max_refrigerated_weeks.value, usual.need.most});
      for (double w = 0.0; w <= most; w += 1.0) weeks.insert(w);
      for (const double w : weeks) {
        if (w * 7.0 > day - ask.available) continue;
        const double room = (day - ask.available) / 7.0 - w;
        const double usual_room = (ordinary - ask.available) / 7.0 - usual.storage_weeks;
        const bool is_usual = day == ordinary && w == usual.storage_weeks;
        if (!is_usual && room > std::max(taxon.max_dry_storage_weeks.high, usual_room) + 1e-9)
          continue;
        const KindTiming timing = time_kind(kinds[k], season, day, w);
        const double missing = timing.cold.cold.missing_weeks;
        const double allowed =
            std::max(usual.need.recommended - usual.need.least, usual.missing_weeks) + 0.05;
        if (!is_usual && missing > allowed) continue;
        const PlannedWave& wave = timing.wave;
        const bool open = wave.first <= wanted && wanted <= wave.last;
        const bool lacking = missing > std::max(0.25, usual.missing_weeks) + 0.05;
        terms[k].emplace_back(open ? 0 : 1, open ? std::abs(wave.peak - wanted) : 0,
                              lacking ? 1 : 0, w);
      }
    }
    for (const auto& a : terms[0]) {
      for (const auto& b : terms[1]) {
        const std::tuple key{std::get<0>(a) + std::get<0>(b), std::get<1>(a) + std::get<1>(b),
                             std::get<2>(a) + std::get<2>(b), std::get<3>(a) + std::get<3>(b),
                             std::abs(day - ordinary)};
        if (key < result.best) result = {key, day};
      }
    }
  }
  return result;
}

TEST_CASE("no combination of day and weeks beats the answer", "[wanted_day][oracle]") {
  for (const char* zone : {"9b", "6b"}) {
    const PotSeason season = season_of_zone(zone);
    const std::vector<TimedKind> kinds{kind_of("tulip-single-late"), kind_of("crocus-large", 2)};
    const WantedAnswer far = find_wanted_day(kinds, season, one(Day{2027, 4, 1}));
    for (const Day wanted : {Day{2027, 2, 20}, Day{2027, 3, 18}, Day{2027, 4, 9}}) {
      const WantedAnswer answer = find_wanted_day(kinds, season, one(wanted));
      if (answer.open == 0) continue;  // then the second search counts, tested by its own law
      INFO(zone << " " << to_iso(wanted));
      const BruteForce brute = brute_force(kinds, season, wanted, far.ordinary_plant);
      CHECK(brute.plant == answer.plant);
      CHECK(2 - std::get<0>(brute.best) == answer.open);
      CHECK(std::get<3>(brute.best) == answer.weeks[0] + answer.weeks[1]);
      int to_peaks = 0;
      for (const PlannedWave& wave : answer.waves)
        if (wave.first <= wanted && wanted <= wave.last) to_peaks += std::abs(wave.peak - wanted);
      CHECK(std::get<1>(brute.best) == to_peaks);
    }
  }
}

TEST_CASE("a day that no planting reaches is refused with the nearest and the limit",
          "[wanted_day]") {
  const PotSeason season = season_of_zone("9b");
  const std::vector<TimedKind> kinds{kind_of("tulip-triumph")};
  const WantedAnswer early = find_wanted_day(kinds, season, one(Day{2026, 11, 20}));
  CHECK_FALSE(early.reachable);
  CHECK(early.days_off > wanted_tolerance_days);
  REQUIRE(early.limit);
  const std::vector<Notice> notices = wanted_notices(early);
  REQUIRE(notices.size() == 1);
  CHECK(notices[0].severity == Severity::refusal);
  CHECK_THAT(report::plain_text(notices[0]),
             Catch::Contains(to_words(early.predicted)) &&
                 Catch::Contains(report::plain_text(*early.limit)) && Catch::Contains("late"));
  const WantedAnswer late = find_wanted_day(kinds, season, one(Day{2027, 6, 25}));
  CHECK(late.days_off < -wanted_tolerance_days);
  CHECK_FALSE(late.reachable);
}

TEST_CASE("a limit of a kind names a kind that the limit holds back", "[wanted_day]") {
  // The paperwhite is never refrigerated: no limit of storage or cold can be its own.
  const PotSeason season = season_of_zone("9b");
  const std::vector<TimedKind> kinds{kind_of("narcissus-tazetta-tender"),
                                     kind_of("tulip-triumph", 2)};
  int named = 0;
  for (Day wanted{2027, 1, 20}; wanted <= Day{2027, 5, 20}; wanted = wanted + 5) {
    const std::optional<Remark> limit = find_wanted_day(kinds, season, one(wanted)).limit;
    if (!limit ||
        (limit->code != RemarkCode::limit_storage && limit->code != RemarkCode::limit_least))
      continue;
    INFO(to_iso(wanted));
    REQUIRE(limit->kinds.size() == 1);
    CHECK(limit->kinds[0].taxon == "tulip-triumph");
    ++named;
  }
  CHECK(named > 0);
}

TEST_CASE("bulbs that come late are the limit of an early wish", "[wanted_day]") {
  const PotSeason season = season_of_zone("9b");
  std::vector<TimedKind> kinds{kind_of("tulip-triumph")};
  const WantedAnswer usual = find_wanted_day(kinds, season, one(Day{2027, 1, 1}));
  kinds[0].ask.available = Day{2026, 12, 10};
  const WantedAnswer late = find_wanted_day(kinds, season, one(Day{2027, 1, 1}));
  CHECK(late.days_off > usual.days_off);
  REQUIRE(late.limit);
  CHECK(report::plain_text(*late.limit) == "bulbs are not to be had before 10 Dec 2026");
}

TEST_CASE("a window is filled with as many days of flower as can be", "[wanted_day]") {
  const PotSeason season = season_of_zone("9b");
  const std::vector<TimedKind> kinds{kind_of("tulip-triumph"), kind_of("crocus-large", 2)};
  const WantedAnswer day = find_wanted_day(kinds, season, one(Day{2027, 3, 20}));
  const DayWindow window{Day{2027, 3, 1}, Day{2027, 4, 15}};
  const WantedAnswer answer = find_wanted_day(kinds, season, window);
  std::vector<DayWindow> waves = wave_windows(forward(kinds, season, answer));
  CHECK(open_days_of(waves, window).days == answer.open);
  std::vector<DayWindow> other = wave_windows(day.waves);
  CHECK(answer.open >= open_days_of(other, window).days);
}

TEST_CASE("a plan for an unreachable day is refused", "[wanted_day]") {
  const PlaceSeason place_season = setting_of("9b");
  PackingCache packings;
  Request request = terrace_pot();
  request.flower = DayWindow{Day{2026, 10, 1}, Day{2026, 10, 1}};
  const Plan plan =
      make_plan(request, {catalogue(), blooms(), place_season, Effort::quick, packings});
  CHECK_FALSE(plan.ok);
  REQUIRE_FALSE(plan.notices.empty());
  CHECK(plan.notices.front().code == NoticeCode::wanted_day_unreachable);
  CHECK_FALSE(plan.layers.empty());
}

}  // namespace
}  // namespace bulbwright
