#include "flowering/display.hpp"

#include <catch2/catch.hpp>

using namespace bulbwright;

namespace {

PlannedWave wave(Day first, Day last) {
  PlannedWave result;
  result.first = first;
  result.last = last;
  return result;
}

}  // namespace

TEST_CASE("overlapping waves count a day once and a gap is told with both its ends", "[display]") {
  const std::vector<PlannedWave> waves{wave(Day{2027, 3, 20}, Day{2027, 3, 31}),
                                       wave(Day{2027, 3, 1}, Day{2027, 3, 10}),
                                       wave(Day{2027, 3, 5}, Day{2027, 3, 12})};
  const Display display = display_of(waves);
  CHECK(*display.first == Day{2027, 3, 1});
  CHECK(*display.last == Day{2027, 3, 31});
  CHECK(display.days_in_flower == 12 + 12);
  REQUIRE(display.gaps.size() == 1);
  CHECK(display.gaps[0].from == Day{2027, 3, 13});
  CHECK(display.gaps[0].to == Day{2027, 3, 19});
}

TEST_CASE("waves that touch leave no gap, and no wave leaves no display", "[display]") {
  const std::vector<PlannedWave> waves{wave(Day{2027, 3, 1}, Day{2027, 3, 10}),
                                       wave(Day{2027, 3, 11}, Day{2027, 3, 12})};
  CHECK(display_of(waves).gaps.empty());
  CHECK_FALSE(display_of({}).first);
}

TEST_CASE("each wave is joined to the one before it that ends last, with the chance of a gap",
          "[display]") {
  std::vector<PlannedWave> waves{wave(Day{2027, 3, 20}, Day{2027, 3, 31}),
                                 wave(Day{2027, 3, 1}, Day{2027, 3, 12}),
                                 wave(Day{2027, 3, 5}, Day{2027, 3, 10})};
  for (std::size_t i = 0; i < 3; ++i) {
    waves[i].taxon = std::string(1, static_cast<char>('a' + i));
    waves[i].doubt.kind = 5.0;
  }
  const Display display = display_of(waves);
  REQUIRE(display.joints.size() == 2);
  CHECK(display.joints[0].before == 1);
  CHECK(display.joints[0].after == 2);
  CHECK(display.joints[0].gap_days == -8);
  CHECK(display.joints[0].gap_chance < 0.2);
  CHECK(display.joints[1].before == 1);
  CHECK(display.joints[1].after == 0);
  CHECK(display.joints[1].gap_days == 7);
  CHECK(display.gaps.at(0).chance == display.joints[1].gap_chance);
  CHECK(display.gaps[0].chance > 0.8);
  CHECK(display.gaps[0].chance < 0.9);  // 6.5 days of 7.07
  waves[0].flowers = false;
  CHECK(display_of(waves).joints.size() == 1);
}

// Law: days in flower and days in gaps together make up the display.
TEST_CASE("flower days and gap days add up to the whole display", "[display][law]") {
  unsigned state = 7;
  const auto draw = [&](unsigned most) {
    state = state * 1664525U + 1013904223U;
    return static_cast<int>((state >> 8U) % most);
  };
  for (int round = 0; round < 500; ++round) {
    std::vector<PlannedWave> waves;
    const int count = 1 + draw(5);
    for (int i = 0; i < count; ++i) {
      const Day first = Day{2027, 1, 1} + draw(120);
      waves.push_back(wave(first, first + draw(25)));
    }
    const Display display = display_of(waves);
    int gap_days = 0;
    for (const DayGap& gap : display.gaps) gap_days += gap.to - gap.from + 1;
    REQUIRE(display.days_in_flower + gap_days == *display.last - *display.first + 1);
  }
}

TEST_CASE("the longest run ends with the last open day, the earliest of equal ones counts",
          "[display]") {
  const auto wave = [](Day first, Day last) {
    PlannedWave made;
    made.first = first;
    made.last = last;
    return made;
  };
  const Day march{2027, 3, 1};
  const std::vector<PlannedWave> waves{wave(march, march + 4), wave(march + 10, march + 12),
                                       wave(march + 13, march + 20)};
  CHECK(display_of(waves).longest == DayWindow{march + 10, march + 20});
  CHECK(display_of({waves.begin(), 1}).longest == DayWindow{march, march + 4});
  const std::vector<PlannedWave> equal{wave(march + 10, march + 14), wave(march, march + 4)};
  CHECK(display_of(equal).longest == DayWindow{march, march + 4});
  CHECK_FALSE(display_of({}).longest);
}
