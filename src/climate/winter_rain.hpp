#pragma once

#include <optional>

#include "base/enum_words.hpp"
#include "climate/place.hpp"

namespace bulbwright {

/// What the rain of a winter does to a pot that stands in it.
enum class WinterRain {
  dry,       ///< less falls than dries off: the pot is watered
  ordinary,  ///< between the two
  wet        ///< far more falls than dries off: the mix stays soaked
};
constexpr auto enum_words(WinterRain) {
  return words_to<WinterRain::wet>("dry", "ordinary", "wet");
}

/// Water of the four months that a planted pot stands bare: November to February, May to August in
/// the south.
struct WinterWater {
  WinterRain rain = WinterRain::ordinary;
  double fallen_mm_a_month = 0.0;  ///< rain and melted snow
  double evaporation_mm_a_month = 0.0;
};

/// Reference evaporation of a month (1 to 12) from its temperatures, millimetres:
///   ET0 = 0.0023 (T + 17.8) sqrt(Tmax - Tmin) Ra a day,
/// never below zero, Ra the radiation above the air in mm a day of water in the middle of the
/// month. Source: Allen and others, "Crop evapotranspiration", FAO Irrigation and Drainage Paper
/// 56, 1998, eq. 52 (Hargreaves), 21 to 25.
double reference_evaporation_mm(const MonthlyNormals& normals, double latitude, int month);

/// Wet: at least 75 mm of rain a month, and 1.5 times what evaporates; a month with a mean of 0
/// degC or less brings snow and ice, which soak nothing, and counts as none. Dry: less falls, snow
/// too, than evaporates. Nothing where no rain is known. This program's own rule: 48 mm fill all
/// the air in the mix of a 29 l pot (0.2 of 27 l under a rim of 380 mm), so half as much again in a
/// month keeps it soaked from one rain to the next wherever it does not dry off. What is done about
/// it: docs/pot-and-stack.md, with its sources.
std::optional<WinterWater> winter_water(const Place& place);

}  // namespace bulbwright
