#include "exact_judge.hpp"

#include <catch2/catch.hpp>

using namespace bulbwright;

// 5,000 and more: packing_judge_bench.
TEST_CASE("no random layout breaks a gap or a wall in whole hundredths", "[packing][oracle]") {
  for (std::size_t k = 0; k < 60; ++k) {
    const std::string fault = judge::fault_of_case(k);
    if (!fault.empty()) FAIL_CHECK(fault);
  }
}

TEST_CASE("the judge finds one hundredth too little", "[packing][oracle]") {
  const std::vector<PackKind> kinds{{40_mm, 1.0, 0}};
  const auto judged = [&](const Section& section, std::vector<PlacedBulb> bulbs) {
    Packing packing;
    packing.bulbs = std::move(bulbs);
    packing.upper_bound = 9;
    return judge::fault_of(section, kinds, packing, 25_mm, 10_mm);
  };
  const Section trough{Shape::rectangle, 400_mm, 100_mm, {}};
  CHECK(judged(trough, {{0.0, 0.0, 0}, {65.0, 0.0, 0}}).empty());
  CHECK_FALSE(judged(trough, {{0.0, 0.0, 0}, {64.99, 0.0, 0}}).empty());
  CHECK(judged(trough, {{170.0, 20.0, 0}}).empty());
  CHECK_FALSE(judged(trough, {{170.01, 20.0, 0}}).empty());
  CHECK_FALSE(judged(trough, {{170.0, 20.01, 0}}).empty());
  CHECK_FALSE(judged({Shape::rectangle, 400_mm, 100_mm, 45_mm}, {{170.0, 20.0, 0}}).empty());
  const Section round{Shape::round, 380_mm, 380_mm, {}};
  CHECK(judged(round, {{96.0, 128.0, 0}}).empty());
  CHECK_FALSE(judged(round, {{96.0, 128.01, 0}}).empty());
  const Section oval{Shape::oval, 500_mm, 300_mm, {}};
  CHECK(judged(oval, {{0.0, 120.0, 0}}).empty());
  CHECK_FALSE(judged(oval, {{0.0, 120.01, 0}}).empty());
  const Section half{Shape::half_round, 500_mm, 200_mm, {}};
  CHECK(judged(half, {{0.0, 30.0, 0}}).empty());
  CHECK_FALSE(judged(half, {{0.0, 29.99, 0}}).empty());
}
