#include "scheduling/spread.hpp"

#include <catch2/catch.hpp>

#include "flowering/display.hpp"
#include "flowering/open_days.hpp"
#include "plan/terrace_fixture.hpp"
#include "report/notice_text.hpp"
#include "scheduling/schedule.hpp"

namespace bulbwright {
namespace {

using namespace terrace;

int longest_days(const Display& display) {
  return display.longest ? display.longest->last - display.longest->first + 1 : 0;
}

TEST_CASE("a spread pot is never in flower for a shorter run than an ordinary one",
          "[spread][law]") {
  int longer = 0;
  for (const char* zone : {"5b", "7a", "8b", "9b", "10b"}) {
    const PotSeason season = season_of_zone(zone);
    const std::vector<TimedKind> kinds{
        kind_of("tulip-triumph"), kind_of("narcissus-large-cupped", 2), kind_of("crocus-large", 3)};
    const SpreadAnswer answer = find_spread(kinds, season, std::nullopt);
    INFO(zone);
    const int after = longest_days(display_of(answer.waves));
    CHECK(after >= longest_days(answer.before.before));
    longer += after > longest_days(answer.before.before) ? 1 : 0;
    for (std::size_t i = 0; i < kinds.size(); ++i) {
      const PlannedWave wave = time_kind(kinds[i], season, answer.plant, answer.weeks[i]).wave;
      CHECK(wave.first == answer.waves[i].first);
      CHECK(wave.last == answer.waves[i].last);
    }
  }
  CHECK(longer > 0);
}

TEST_CASE("no day and weeks that the bounds allow give a longer run", "[spread][oracle]") {
  // Written out as loops, over the choices of which the header says what bounds them.
  const PotSeason season = season_of_zone("9b");
  const std::vector<TimedKind> kinds{kind_of("tulip-triumph"), kind_of("crocus-large", 2)};
  const SpreadAnswer answer = find_spread(kinds, season, std::nullopt);
  const Day ordinary = answer.before.plant_before;
  const PotWinter& normal = season.winters[season.normal];
  const DayWindow days = planting_season(season.season, season.hemisphere);
  int best = 0;
  for (Day day = days.first; day <= days.last; ++day) {
    std::vector<std::vector<DayWindow>> waves(kinds.size());
    for (std::size_t k = 0; k < kinds.size(); ++k) {
      const Taxon& taxon = *kinds[k].ask.taxon;
      const double mix = rounded(mix_at_planting(normal, day).value(), 0.1);
      const double usual_mix = rounded(mix_at_planting(normal, ordinary).value(), 0.1);
      if (mix > std::max(taxon.soil_max_c.high, usual_mix)) continue;
      const TaxonCold usual = time_kind(kinds[k], season, ordinary).cold.cold;
      const double most = std::min(
          {taxon.dry_cold_max_weeks.value, taxon.max_refrigerated_weeks.value, usual.need.most});
      for (double weeks = 0.0; weeks <= most; weeks += 1.0) {
        const double room = (day - kinds[k].ask.available) / 7.0 - weeks;
        const double usual_room = (ordinary - kinds[k].ask.available) / 7.0 - usual.storage_weeks;
        if (room < 0.0 || room > std::max(taxon.max_dry_storage_weeks.high, usual_room) + 1e-9)
          continue;
        const KindTiming timing = time_kind(kinds[k], season, day, weeks);
        const double allowed =
            std::max(usual.need.recommended - usual.need.least, usual.missing_weeks) + 0.05;
        if (timing.cold.cold.missing_weeks > allowed) continue;
        waves[k].push_back({timing.wave.first, timing.wave.last});
      }
    }
    for (const DayWindow& a : waves[0]) {
      for (const DayWindow& b : waves[1]) {
        const bool joined = a.first <= b.last + 1 && b.first <= a.last + 1;
        const int run = joined ? std::max(a.last, b.last) - std::min(a.first, b.first) + 1
                               : std::max(a.last - a.first, b.last - b.first) + 1;
        best = std::max(best, run);
      }
    }
  }
  CHECK(longest_days(display_of(answer.waves)) >= best);
}

TEST_CASE("a given planting day is kept, fixed weeks too", "[spread]") {
  const PotSeason season = season_of_zone("9b");
  std::vector<TimedKind> kinds{kind_of("tulip-triumph"), kind_of("crocus-large", 2)};
  kinds[0].ask.fixed_weeks = 8.0;
  const SpreadAnswer answer = find_spread(kinds, season, Day{2027, 1, 8});
  CHECK(answer.plant == Day{2027, 1, 8});
  CHECK(answer.before.plant_before == Day{2027, 1, 8});
  CHECK(answer.weeks[0] == 8.0);
}

TEST_CASE("spreading works in the south and with forced kinds", "[spread]") {
  const PlaceSeason place_season = setting_of_site("Christchurch");
  REQUIRE(place_season.hemisphere == Hemisphere::south);
  const PotSeason season = season_of(place_season);
  std::vector<TimedKind> kinds{kind_of("tulip-triumph", 1, Hemisphere::south),
                               kind_of("crocus-large", 2, Hemisphere::south)};
  const SpreadAnswer answer = find_spread(kinds, season, std::nullopt);
  CHECK(answer.plant.year() == 2026);
  CHECK(answer.waves[0].first > answer.plant);
  kinds[0].ask.use = Use::forcing;
  const SpreadAnswer forced = find_spread(kinds, season, std::nullopt);
  CHECK(longest_days(display_of(forced.waves)) >= longest_days(forced.before.before));
}

TEST_CASE("before and after are told in days", "[spread]") {
  const PotSeason season = season_of_zone("9b");
  const std::vector<TimedKind> kinds{kind_of("tulip-triumph"), kind_of("narcissus-large-cupped", 2),
                                     kind_of("crocus-large", 3)};
  const SpreadAnswer answer = find_spread(kinds, season, std::nullopt);
  const std::vector<Notice> notices = spread_notices(answer, kinds);
  REQUIRE(notices.size() == 1);
  CHECK(notices[0].code == NoticeCode::spread);
  const std::string after = std::to_string(longest_days(display_of(answer.waves)));
  const std::string before = std::to_string(longest_days(answer.before.before));
  CHECK_THAT(report::plain_text(notices[0]),
             Catch::Contains("spread out: " + after + " days without a gap") &&
                 Catch::Contains("as usually planted: " + before + " days"));
  CHECK_THAT(report::plain_text(notices[0]), Catch::Contains(to_words(answer.before.plant_before)));
}

}  // namespace
}  // namespace bulbwright
