#include "materials/lifting.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace bulbwright {
namespace {

constexpr double load_constant_kg = 23.0;

double centimetres(Millimetres length) {
  return length.value() / 10.0;
}

double reach_multiplier(double h_cm) {
  if (h_cm <= 25.0) return 1.0;
  return h_cm > 63.0 ? 0.0 : 25.0 / h_cm;
}

double height_multiplier(double v_cm) {
  return v_cm < 0.0 || v_cm > 175.0 ? 0.0 : 1.0 - 0.003 * std::abs(v_cm - 75.0);
}

double travel_multiplier(double d_cm) {
  if (d_cm <= 25.0) return 1.0;
  return d_cm > 175.0 ? 0.0 : 0.82 + 4.5 / d_cm;
}

double twist_multiplier(double degrees) {
  return degrees > 135.0 ? 0.0 : 1.0 - 0.0032 * degrees;
}

double coupling_multiplier(Coupling coupling, double v_cm) {
  switch (coupling) {
    case Coupling::good:
      return 1.0;
    case Coupling::fair:
      return v_cm < 75.0 ? 0.95 : 1.0;
    case Coupling::poor:
      return 0.9;
  }
  return 0.0;
}

}  // namespace

Kilograms niosh_weight_limit(const LiftTask& task) {
  const double v_cm = centimetres(task.hand_height);
  return Kilograms{load_constant_kg * reach_multiplier(centimetres(task.reach)) *
                   height_multiplier(v_cm) * travel_multiplier(centimetres(task.travel)) *
                   twist_multiplier(task.twist_degrees) * task.frequency *
                   coupling_multiplier(task.coupling, v_cm)};
}

Kilograms team_guideline(Kilograms one_person, int people) {
  assert(people >= 1 && people <= 3);
  if (people == 1) return one_person;
  return people == 2 ? 2.0 * one_person * 2.0 / 3.0 : 3.0 * one_person / 2.0;
}

LiftTask lift_from_ground(Millimetres outer_width) {
  return {Millimetres{250.0} + outer_width / 2.0,
          Millimetres{100.0},
          Millimetres{650.0},
          0.0,
          1.0,
          Coupling::poor};
}

LiftGuideline judge_lift(Kilograms load, Millimetres outer_width) {
  LiftGuideline guideline;
  guideline.one = std::min(niosh_weight_limit(lift_from_ground(outer_width)), hse_filter_careful);
  guideline.two = team_guideline(hse_filter_careful, 2);
  const auto above = [load](Kilograms limit) {
    return rounded(load.value(), 0.1) > rounded(limit.value(), 0.1);
  };
  guideline.verdict = !above(guideline.one)   ? LiftVerdict::one_person
                      : !above(guideline.two) ? LiftVerdict::two_people
                                              : LiftVerdict::not_lifted;
  return guideline;
}

}  // namespace bulbwright
