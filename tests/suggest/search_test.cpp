#include "suggest/search.hpp"

#include <catch2/catch.hpp>

#include "plan/terrace_fixture.hpp"

namespace bulbwright {
namespace {

using namespace terrace;

const Day first{2027, 3, 1};
const DayWindow window{first, first + 60};

struct Sketch {
  int from = 0, to = 0;  ///< days after `first`
  double weeks = 0.0, cost = 0.0;
};

/// Two kinds whose days are made by hand.
Candidates candidates_of(std::initializer_list<Sketch> tulip,
                         std::initializer_list<Sketch> crocus) {
  Candidates made;
  made.first_day = Day{2026, 9, 15};
  for (const auto& [id, sketches] : {std::pair{"tulip-triumph", tulip}, {"crocus-large", crocus}}) {
    Candidate candidate;
    candidate.kind = kind_of(id);
    candidate.bulb_height = Millimetres{40.0};
    for (const Sketch& day : sketches) {
      candidate.days.set(candidate.planted.size());
      const Day open = first + day.from, last = first + day.to;
      candidate.planted.push_back({open, open + (last - open) / 2, last, day.weeks, day.cost});
    }
    made.kinds.push_back(candidate);
  }
  return made;
}

/// The planting day chosen for both kinds together.
std::size_t day_for_both(const Candidates& candidates) {
  const Pot pot = make_pot(terrace_pot({}).pot);
  DepthCheck depth{candidates, catalogue(), pot};
  SuggestionWish wish;
  wish.window = window;
  const auto at_any_depth = [](const Candidate& kind, std::size_t day, int) {
    return std::optional{kind.planted[day]};
  };
  for (const RankedStack& stack : search_stacks(candidates, depth, at_any_depth, wish).ranked)
    if (stack.kinds.size() == 2) return stack.key.day;
  FAIL("no stack of both");
  return 0;
}

TEST_CASE("days of a stack are ranked by run, weeks, days open, flower, cost, then the earliest",
          "[suggestion]") {
  // A longer run wins over everything.
  CHECK(day_for_both(candidates_of({{0, 9}, {0, 10, 9.0, 0.9}}, {{0, 9}, {0, 3, 9.0}})) == 1);
  // Then fewer weeks of storage, though fewer days are open.
  CHECK(day_for_both(candidates_of({{0, 9, 5.0}, {0, 9, 4.0}}, {{20, 25}, {0, 9}})) == 1);
  // Then more days with something open, though less flower.
  CHECK(day_for_both(candidates_of({{0, 9}, {0, 9}}, {{0, 9}, {20, 25}})) == 1);
  // Then more flower.
  CHECK(day_for_both(candidates_of({{0, 9}, {0, 9}}, {{0, 5}, {0, 6}})) == 1);
  // Then the cheaper planting day.
  CHECK(day_for_both(candidates_of({{0, 9, 0.0, 0.9}, {0, 9, 0.0, 0.1}}, {{0, 9}, {0, 9}})) == 1);
  // Then the earliest.
  CHECK(day_for_both(candidates_of({{0, 9}, {0, 9}}, {{0, 9}, {0, 9}})) == 0);
}

TEST_CASE("only what lies in the window counts", "[suggestion]") {
  // 60 days before the window against 3 in it.
  CHECK(day_for_both(candidates_of({{-70, 0}, {0, 2}}, {{-70, 0}, {0, 2}})) == 1);
}

}  // namespace
}  // namespace bulbwright
