#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "base/calendar_day.hpp"
#include "base/error.hpp"
#include "climate/place_request.hpp"
#include "cold/storage_request.hpp"
#include "layers/layer_request.hpp"
#include "pot/pot_request.hpp"

namespace bulbwright {

/// What a pot file and the flags ask for, read and checked for form, nothing resolved or computed
/// yet. Each part is owned by its room; this header only puts them together.

struct PotFile {
  PotRequest pot;
  std::optional<PlaceRequest> place;
  std::optional<int> season;
  std::optional<Day> plant;
  std::optional<DayWindow> flower;
  bool spread = false;  ///< waves are to follow each other without a gap
  LayerOrder order = LayerOrder::given;
  StorageRequest storage;
  std::vector<std::string> pests;  ///< known words, as given
  bool wet_winter = false;
  std::vector<LayerRequest> layers;  ///< bottom first

  std::string file;  ///< name for messages; empty when the request came from flags alone
  /// Where each field stood, by path ("layers[1].grade"), for messages of later checks.
  std::map<std::string, SourcePlace> places;
};

}  // namespace bulbwright
