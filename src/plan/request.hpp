#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/calendar_day.hpp"
#include "catalogue/pest.hpp"
#include "climate/place_request.hpp"
#include "climate/winter_rain.hpp"
#include "cold/storage_request.hpp"
#include "layers/layer_request.hpp"
#include "pot/pot_request.hpp"

namespace bulbwright {

/// What is asked of a plan, read and checked for form, nothing resolved or computed yet. Each part
/// is owned by its room; this header only puts them together.
struct Request {
  PotRequest pot;
  std::optional<PlaceRequest> place;
  std::optional<int> season;
  std::optional<Day> plant;
  std::optional<DayWindow> flower;
  bool spread = false;  ///< waves are to follow each other without a gap
  LayerOrder order = LayerOrder::given;
  StorageRequest storage;
  std::vector<Pest> pests;           ///< each once, as given
  std::optional<WinterRain> winter;  ///< else judged by the rain of the place
  std::vector<LayerRequest> layers;  ///< bottom first

  bool operator==(const Request&) const = default;
};

}  // namespace bulbwright
