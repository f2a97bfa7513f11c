#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "base/calendar_day.hpp"
#include "base/notice.hpp"
#include "caution/caution.hpp"
#include "climate/place_account.hpp"
#include "cold/taxon_cold.hpp"
#include "flowering/wave.hpp"
#include "layers/planned_layer.hpp"
#include "materials/plan_materials.hpp"
#include "plan/request.hpp"
#include "plan/task.hpp"
#include "pot/planned_pot.hpp"
#include "scheduling/reports.hpp"
#include "shopping/need.hpp"

namespace bulbwright {

/// A plan is the whole answer for one pot: plain data, everything computed, nothing left to a
/// renderer. Each part is owned by its room; this header only puts them together.

struct PlacePicture {
  std::string label;  ///< "zone 9b", "San Francisco", "your normals"
  double latitude = 0.0;
  Hemisphere hemisphere = Hemisphere::north;
  std::optional<Remark> basis{};        ///< how the winters were made
  std::array<double, 12> mix_mean_c{};  ///< monthly means of the pot's mix in the normal winter
  std::optional<Day> measured_until;    ///< with records of a running winter
  PlaceAccount account{};
  WinterRain winter = WinterRain::ordinary;  ///< that mix and care go by
  bool winter_given = false;                 ///< by the grower, else by the rain of the place
};

struct Plan {
  Request request;  ///< as it was asked, before wishes were settled
  bool ok = true;
  int season = 0;
  PlannedPot pot;
  PlacePicture place;
  Day plant;
  bool plant_given = false;  ///< by the grower, else chosen
  std::vector<PlannedLayer> layers;
  std::vector<TaxonCold> cold;
  std::vector<PlantingWindow> windows;
  std::vector<PlannedDate> dates;
  std::vector<PlannedWave> waves;
  Display display;
  std::optional<WantedReport> wanted;
  std::optional<SpreadReport> spread;
  PlanMaterials materials;
  std::vector<ShoppingNeed> shopping;
  std::vector<Notice> notices;
  std::vector<Caution> cautions;
};

}  // namespace bulbwright
