#include "scheduling/combination_search.hpp"

#include <catch2/catch.hpp>

#include "flowering/open_days.hpp"
#include "plan/terrace_fixture.hpp"
#include "scheduling/schedule.hpp"

namespace bulbwright {
namespace {

using namespace terrace;

/// The best key of one day by trying everything, each key built from its definition.
CombinationKey best_of_day(const TimingOptions& options, std::size_t day, DayWindow within,
                           CoverageFirst order) {
  const auto& kinds = options.at(day);
  std::vector<std::size_t> choice(kinds.size(), 0);
  std::optional<CombinationKey> best;
  for (;;) {
    CombinationKey key;
    std::vector<DayWindow> waves;
    for (std::size_t k = 0; k < kinds.size(); ++k) {
      const StorageOption& option = kinds[k][choice[k]];
      waves.push_back({option.first, option.last});
      key.short_of_cold += option.short_of_cold ? 1 : 0;
      key.storage_weeks += option.weeks;
    }
    const OpenDays coverage = open_days_of(waves, within);
    const bool days = order == CoverageFirst::days;
    key.first = -(days ? coverage.days : coverage.longest_days);
    key.second = -(days ? coverage.longest_days : coverage.days);
    key.from_ordinary = std::abs(options.days()[day] - options.ordinary());
    if (!best || key < *best) best = key;
    std::size_t k = 0;
    while (k < kinds.size() && ++choice[k] == kinds[k].size()) choice[k++] = 0;
    if (k == kinds.size()) return *best;
  }
}

TEST_CASE("no combination beats the one found, for a window and for a run",
          "[combination_search][oracle]") {
  const std::vector<TimedKind> kinds{kind_of("tulip-triumph"), kind_of("narcissus-cyclamineus", 2),
                                     kind_of("crocus-large", 3)};
  for (const char* zone : {"9b", "7b"}) {
    const PotSeason season = season_of_zone(zone);
    TimingMemo memo{kinds, season};
    const Day ordinary =
        choose_planting(scheduled_kinds(kinds, season), season.view(), std::nullopt).plant;
    const TimingOptions options{memo, ordinary, std::nullopt};
    for (const DayWindow window : {DayWindow{Day{2027, 2, 1}, Day{2027, 4, 20}},
                                   DayWindow{Day{2027, 3, 10}, Day{2027, 3, 25}}}) {
      for (const CoverageFirst order : {CoverageFirst::days, CoverageFirst::longest_run}) {
        const Combination found = search_combination(options, window, order);
        std::optional<CombinationKey> best;
        for (std::size_t day = 0; day < options.days().size(); ++day) {
          const CombinationKey key = best_of_day(options, day, window, order);
          if (!best || key < *best) best = key;
        }
        INFO(zone << " " << to_iso(window.first));
        CHECK(found.key == *best);
      }
    }
  }
}

TEST_CASE("descent among many combinations comes within three days of trying all",
          "[combination_search][oracle]") {
  // Kinds enough for more combinations a day than are tried one by one.
  const std::vector<TimedKind> kinds{kind_of("tulip-single-late"),
                                     kind_of("tulip-triumph", 2),
                                     kind_of("narcissus-large-cupped", 3),
                                     kind_of("narcissus-trumpet", 4),
                                     kind_of("narcissus-jonquilla", 5),
                                     kind_of("crocus-large", 6),
                                     kind_of("hyacinth", 7)};
  const DayWindow window{Day{2027, 1, 1}, Day{2027, 5, 31}};
  const PotSeason season = season_of_zone("8a");
  TimingMemo memo{kinds, season};
  for (const Day given : {Day{2026, 11, 20}, Day{2026, 12, 27}}) {
    const TimingOptions options{memo, given, given};
    double combinations = 1.0;
    for (const auto& kind : options.at(0)) combinations *= static_cast<double>(kind.size());
    REQUIRE(combinations > most_combinations);
    const Combination found = search_combination(options, window, CoverageFirst::longest_run);
    const CombinationKey best = best_of_day(options, 0, window, CoverageFirst::longest_run);
    CHECK(found.key >= best);  // else the oracle is wrong
    CHECK(-found.key.first >= -best.first - 3);
  }
}

}  // namespace
}  // namespace bulbwright
