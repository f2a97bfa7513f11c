#include "materials/lifting.hpp"

#include <cmath>

#include <catch2/catch.hpp>

#include "materials/materials_vectors.hpp"

using namespace bulbwright;

namespace {

Millimetres cm(double length) {
  return Millimetres{length * 10.0};
}

}  // namespace

// Waters, Putz-Anderson, Garg, NIOSH 94-110: metric form, multipliers not rounded.
TEST_CASE("the weight limit is that of the revised NIOSH equation", "[lifting][published]") {
  for (const auto& v : materials_vectors("niosh_rwl")) {
    CAPTURE(v.inputs);
    const std::string grip = v.word("coupling");
    const LiftTask task{
        cm(v.in("H")),
        cm(v.in("V")),
        cm(v.in("D")),
        v.in("A"),
        v.in("FM"),
        grip == "good" ? Coupling::good : grip == "fair" ? Coupling::fair : Coupling::poor};
    CHECK(niosh_weight_limit(task).value() == Approx(v.expected).margin(v.tolerance));
  }
}

// The manual's example 1 in lb and in (16.3 and 14.5 lb as printed, from memory). The metric form
// differs by its rounder constants: 51 lb is 23.13 kg, 10 in is 25.4 cm, 0.0075 an inch is 0.00295
// a cm.
TEST_CASE("the manual's first example comes out within 3.5 % in metric", "[lifting][published]") {
  constexpr double kilograms_per_pound = 0.45359237;
  for (const auto& v : materials_vectors("niosh_rwl_us")) {
    CAPTURE(v.inputs);
    const LiftTask task{Millimetres{v.in("H") * 25.4},
                        Millimetres{v.in("V") * 25.4},
                        Millimetres{v.in("D") * 25.4},
                        v.in("A"),
                        v.in("FM"),
                        Coupling::fair};
    const double pounds = niosh_weight_limit(task).value() / kilograms_per_pound;
    CHECK(pounds < v.expected);
    CHECK(pounds == Approx(v.expected).epsilon(0.035));
  }
}

// Ends of the published ranges (from memory): beyond them nothing may be lifted.
TEST_CASE("a lift outside the equation's range has no limit above zero", "[lifting]") {
  const LiftTask ideal{cm(25), cm(75), cm(25), 0, 1, Coupling::good};
  CHECK(niosh_weight_limit(ideal) == Kilograms{23.0});
  const auto limit = [&](auto change) {
    LiftTask task = ideal;
    change(task);
    return niosh_weight_limit(task).value();
  };
  CHECK(limit([](LiftTask& t) { t.reach = cm(63); }) > 0.0);
  CHECK(limit([](LiftTask& t) { t.reach = cm(63.1); }) == 0.0);
  CHECK(limit([](LiftTask& t) { t.hand_height = cm(175.1); }) == 0.0);
  CHECK(limit([](LiftTask& t) { t.travel = cm(175.1); }) == 0.0);
  CHECK(limit([](LiftTask& t) { t.twist_degrees = 135.1; }) == 0.0);
  CHECK(limit([](LiftTask& t) { t.reach = cm(10); }) == 23.0);
  CHECK(limit([](LiftTask& t) { t.coupling = Coupling::fair; }) == 23.0);
  CHECK(limit([](LiftTask& t) { t.coupling = Coupling::poor; }) == Approx(20.7));
}

// Two thirds of the sum for two, half of it for three: rail safety guidance after the HSE.
TEST_CASE("teams get the careful share of the sum", "[lifting][published]") {
  for (const auto& v : materials_vectors("team_lift")) {
    CAPTURE(v.inputs);
    CHECK(team_guideline(Kilograms{v.in("one")}, static_cast<int>(v.in("people"))).value() ==
          Approx(v.expected).margin(v.tolerance));
  }
  CHECK(team_guideline(Kilograms{16.0}, 1) == Kilograms{16.0});
}

TEST_CASE("a pot is judged by the smaller guideline", "[lifting]") {
  // The vectors' 380 mm pot from the ground, hands 10 cm up: 8.4 kg.
  CHECK(niosh_weight_limit(lift_from_ground(380_mm)).value() == Approx(8.419).margin(0.001));
  const LiftGuideline light = judge_lift(Kilograms{8.4}, 380_mm);
  CHECK(light.one == niosh_weight_limit(lift_from_ground(380_mm)));
  CHECK(light.verdict == LiftVerdict::one_person);
  CHECK(judge_lift(Kilograms{8.5}, 380_mm).verdict == LiftVerdict::two_people);
  CHECK(judge_lift(Kilograms{21.3}, 380_mm).verdict == LiftVerdict::two_people);
  const LiftGuideline heavy = judge_lift(Kilograms{21.4}, 380_mm);
  CHECK(heavy.verdict == LiftVerdict::not_lifted);
  CHECK(heavy.two.value() == Approx(16.0 * 2.0 * 2.0 / 3.0));
  // The example pot, 42 kg filled, is never a lift, even for two.
  CHECK(judge_lift(Kilograms{42.0}, 410_mm).verdict == LiftVerdict::not_lifted);
  // Too wide to hold close: nobody alone.
  CHECK(judge_lift(Kilograms{0.5}, 800_mm).verdict == LiftVerdict::two_people);
  // A pot so narrow that the equation allows more: the careful figure for one stands.
  CHECK(judge_lift(Kilograms{1.0}, 100_mm).one <= Kilograms{16.0});
}
