#include "flowering/open_days.hpp"

#include <random>

#include <catch2/catch.hpp>

namespace bulbwright {
namespace {

const Day start{2027, 3, 1};

DayWindow days(int from, int to) {
  return {start + from, start + to};
}

PlannedWave wave(int first, int peak, int last) {
  PlannedWave planned;
  planned.first = start + first;
  planned.peak = start + peak;
  planned.last = start + last;
  return planned;
}

/// Day by day, without sorting or merging.
OpenDays counted(const std::vector<DayWindow>& waves, DayWindow within) {
  OpenDays coverage;
  int run = 0;
  for (Day day = within.first; day <= within.last; ++day) {
    bool open = false;
    for (const DayWindow& wave : waves) open = open || (wave.first <= day && day <= wave.last);
    run = open ? run + 1 : 0;
    coverage.days += open ? 1 : 0;
    if (run > coverage.longest_days) {
      coverage.longest_days = run;
      coverage.longest = DayWindow{day - (run - 1), day};
    }
  }
  return coverage;
}

TEST_CASE("waves that touch make one run and a gap ends it", "[coverage]") {
  std::vector<DayWindow> waves{days(20, 24), days(0, 4), days(5, 9)};
  const OpenDays coverage = open_days_of(waves, days(-100, 100));
  CHECK(coverage.days == 15);
  CHECK(coverage.longest_days == 10);
  CHECK(coverage.longest == days(0, 9));
}

TEST_CASE("only days inside the window count", "[coverage]") {
  std::vector<DayWindow> waves{days(0, 9), days(30, 39)};
  CHECK(open_days_of(waves, days(5, 31)).days == 7);
  CHECK(open_days_of(waves, days(12, 20)).days == 0);
  CHECK_FALSE(open_days_of(waves, days(12, 20)).longest);
}

TEST_CASE("coverage equals a count day by day on random waves", "[coverage][oracle]") {
  std::mt19937 engine{20270301};
  const auto draw = [&](int most) {
    return static_cast<int>(engine() % (static_cast<unsigned>(most) + 1U));
  };
  for (int round = 0; round < 2000; ++round) {
    std::vector<DayWindow> waves;
    const int n = draw(5);
    for (int i = 0; i < n; ++i) {
      const int first = draw(60);
      waves.push_back(days(first, first + draw(20)));
    }
    const int from = draw(60);
    const DayWindow within = days(from, from + draw(40));
    const OpenDays expected = counted(waves, within);
    const OpenDays found = open_days_of(waves, within);
    REQUIRE(found.days == expected.days);
    REQUIRE(found.longest_days == expected.longest_days);
    REQUIRE(found.longest == expected.longest);
  }
}

TEST_CASE("one wave is in most flower at its peak", "[coverage]") {
  const std::vector<PlannedWave> waves{wave(0, 4, 12)};
  CHECK(day_of_most_flower(waves) == start + 4);
  CHECK_FALSE(day_of_most_flower({}));
}

TEST_CASE("a kind that does not flower is open on no day", "[coverage]") {
  PlannedWave flowering, other;
  flowering.first = Day{2027, 3, 1};
  flowering.peak = Day{2027, 3, 5};
  flowering.last = Day{2027, 3, 10};
  other.first = other.peak = other.last = Day{2027, 8, 31};
  other.flowers = false;
  const std::vector<PlannedWave> waves{flowering, other};
  CHECK(wave_windows(waves).size() == 1);
  CHECK(waves_open(waves, Day{2027, 8, 31}) == 0);
  CHECK(day_of_most_flower(waves) == Day{2027, 3, 5});
  CHECK_FALSE(day_of_most_flower(std::vector<PlannedWave>{other}));
}

TEST_CASE("most flower is where most waves are open and nearest to their peaks", "[coverage]") {
  // Two open on days 8 to 12 only: sums of days to the peaks 4 and 11 are 7 on each up to 11.
  std::vector<PlannedWave> waves{wave(0, 4, 12), wave(8, 11, 20)};
  CHECK(day_of_most_flower(waves) == start + 8);
  CHECK(waves_open(waves, start + 8) == 2);
  // A third wave, far away, changes nothing.
  waves.push_back(wave(40, 44, 50));
  CHECK(day_of_most_flower(waves) == start + 8);
  CHECK(waves_open(waves, start + 30) == 0);
}

}  // namespace
}  // namespace bulbwright
