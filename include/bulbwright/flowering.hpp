#pragma once

#include "bulbwright/calendar_day.hpp"
#include "bulbwright/cold.hpp"
#include "bulbwright/pot_temperature.hpp"
#include "bulbwright/request.hpp"
#include "bulbwright/taxon.hpp"

namespace bulbwright {

/// One wave in one winter.
struct FlowerDays {
  Day first, peak, last;
};

FlowerDays flower_days(const Taxon& taxon, Use use, const PotWinter& winter, Day planted,
                       const ColdState& start);

}  // namespace bulbwright
