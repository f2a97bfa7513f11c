#include "bulbwright/flowering.hpp"

#include <algorithm>

namespace bulbwright {

FlowerDays flower_days(const Taxon& taxon, Use /*use*/, const PotWinter& winter, Day planted,
                       const ColdState& start) {
  ColdState cold = start;
  double heat = 0.0;
  const double wanted = 120.0 + 60.0 * taxon.season_class;
  Day day = planted;
  for (; day < winter.last(); ++day) {
    const PotDay& at = winter.at(day);
    cold.add(at);
    if (cold.weeks().value() < taxon.outdoor_cold_weeks.low || day - planted < 14) continue;
    heat += std::max(0.0, at.mean_c);
    if (heat >= wanted) break;
  }
  const int days = static_cast<int>(taxon.flower_days.value);
  return {day, day + days / 3, day + days};
}

}  // namespace bulbwright
