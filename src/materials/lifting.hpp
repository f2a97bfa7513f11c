#pragma once

#include "base/enum_words.hpp"
#include "base/quantity.hpp"

namespace bulbwright {

/// How a load is gripped. good: handles; fair: a rim or edge; poor: from below, bulky, slippery.
enum class Coupling { good, fair, poor };

/// One lift, in the terms of the revised NIOSH lifting equation.
struct LiftTask {
  Millimetres reach;           ///< H: ankles to the middle of the hands, level
  Millimetres hand_height;     ///< V: hands above the ground where the lift starts, 0 or more
  Millimetres travel;          ///< D: how far up
  double twist_degrees = 0.0;  ///< A: asymmetry, 0 to 180
  double frequency = 1.0;      ///< FM: 1 for one lift in five minutes or fewer, up to an hour
  Coupling coupling = Coupling::fair;
};

/// Recommended weight limit: 23 kg x HM x VM x DM x AM x FM x CM, each multiplier as published, 0
/// outside its range. Metric form (the US form in lb and in comes out about 2 % higher). For
/// healthy workers, two hands, dry and stable load, good footing; it says nothing about teams.
/// HM = 25/H (1 up to 25 cm, 0 above 63), VM = 1 - 0.003 |V - 75| (0 above 175 cm), DM = 0.82 +
/// 4.5/D (1 up to 25 cm, 0 above 175), AM = 1 - 0.0032 A (0 above 135 degrees), CM 1, 1 / 0.95, 1 /
/// 0.9, 0.9 below and from 75 cm.
/// Source: Waters, Putz-Anderson, Garg, "Applications Manual for the Revised NIOSH Lifting
/// Equation", DHHS (NIOSH) Publication 94-110, 1994 (revised 2021); range ends from memory.
Kilograms niosh_weight_limit(const LiftTask& task);

/// Guideline for a team of 1 to 3: one person's figure times 1, 4/3 (two thirds of the sum) or 3/2
/// (half of the sum). Source: rail safety guidance after the UK Health and Safety Executive; a
/// trial of soldiers found 80 to 91 % of the sum (Sharp et al. 1997), so this is the careful side.
Kilograms team_guideline(Kilograms one_person, int people);

/// Load held close between elbow and knuckle height, the figure for women, which is the careful one
/// (for men 25 kg). A filter for a closer look, not a safe limit; the law sets no weight.
/// Source: HSE, "Manual handling at work", INDG143 (from memory).
inline constexpr Kilograms hse_filter_careful{16.0};

/// Lifting a pot of that outer size (the shorter side) off the ground from below to bench height,
/// 750 mm, hands 100 mm up. H = 250 mm + half the size, as the manual takes it for hands below 250
/// mm (from memory).
LiftTask lift_from_ground(Millimetres outer_width);

enum class LiftVerdict {
  one_person,  ///< within the guideline for one
  two_people,  ///< above that, within the one for two
  not_lifted   ///< fill it where it will stand; move it empty or on wheels
};
constexpr auto enum_words(LiftVerdict) {
  return words_to<LiftVerdict::not_lifted>("one person", "two people", "do not lift");
}

/// The guidelines for a load close to the body from the ground, and the verdict: by the smaller of
/// both systems, since who lifts is not known. Figures are to be printed as "about" and as
/// guidelines, never as safe limits.
struct LiftGuideline {
  Kilograms one;  ///< the smaller of the NIOSH limit from the ground and the careful HSE figure
  Kilograms two;  ///< the careful HSE figure for a team; NIOSH gives nothing for two
  LiftVerdict verdict = LiftVerdict::not_lifted;
};

/// Judged on the load rounded to 0.1 kg.
LiftGuideline judge_lift(Kilograms load, Millimetres outer_width);

}  // namespace bulbwright
