#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "base/calendar_day.hpp"
#include "base/error.hpp"
#include "base/quantity.hpp"
#include "climate/place.hpp"
#include "packing/packing.hpp"
#include "pot/section.hpp"

namespace bulbwright {

/// What a pot file and the flags ask for, read and checked for form, nothing resolved or computed
/// yet. Units are already inside units. Sizes are as the grower gave them.

/// One level of a pot's profile: inner sizes at a height above the inner floor.
struct ProfileLevel {
  Millimetres height;
  Millimetres length;  ///< along x (the width, for a half-round)
  Millimetres width;   ///< along y (the depth, for a half-round)

  bool operator==(const ProfileLevel&) const = default;
};

struct PotRequest {
  std::string name;  ///< may be empty
  Shape shape = Shape::round;
  std::optional<LengthPair> top;   ///< `top`; for round sections both are the diameter
  std::optional<LengthPair> base;  ///< absent: a stated default proportion of the top
  std::optional<Millimetres> height;
  std::vector<ProfileLevel> profile;     ///< instead of top, base and height
  Millimetres corner;                    ///< rectangle only
  std::optional<Millimetres> thickness;  ///< present: top, base and height are outer sizes
  std::optional<Millimetres> headspace;
  std::string material;                  ///< "" or one of known_materials()
  std::optional<std::string> last_crop;  ///< a genus in lower case
  bool used_mix = false;

  bool operator==(const PotRequest&) const = default;
};

struct PlaceRequest {
  std::optional<std::string> zone;  ///< "9b", lower case
  bool south = false;               ///< with a zone
  std::optional<std::string> site;
  ZoneRegion region = ZoneRegion::all;  ///< with a zone: which of its stations
  std::optional<MonthlyNormals> normals;
  std::optional<std::string> records_file;
  std::optional<double> latitude;  ///< degrees, south negative
  Exposure exposure = Exposure::open;

  bool operator==(const PlaceRequest&) const = default;
};

struct StorageRequest {
  std::optional<Celsius> temperature;
  std::optional<std::string> method;
  std::optional<double> weeks;  ///< fixes the weeks of all taxa; 0 = none

  bool operator==(const StorageRequest&) const = default;
};

/// outdoors: the pot stands out; forcing: brought indoors to flower.
enum class Use { outdoors, forcing };

struct LayerPart {
  std::string taxon;   ///< an id of the catalogue, checked when resolved
  double share = 1.0;  ///< above 0
  /// Fixes the weeks of cold storage of this kind alone, over StorageRequest::weeks; 0 = none.
  std::optional<double> storage_weeks{};

  bool operator==(const LayerPart&) const = default;
};

struct LayerRequest {
  std::vector<LayerPart> parts;     ///< one, or several for a mixture
  std::optional<double> grade_cm;   ///< middle of the circumference asked for ("12", "12/14")
  std::optional<int> count;         ///< own bulbs, 1 to 1000
  std::optional<Millimetres> gap;   ///< absent: the taxon's own
  bool forcing_gap = false;         ///< "gap": "forcing"
  std::optional<Millimetres> wall;  ///< clearance to the inner wall
  Arrange arrange = Arrange::mixed;
  std::string label;
  std::optional<Day> received;
  double cold_already_weeks = 0.0;
  Use use = Use::outdoors;

  bool operator==(const LayerRequest&) const = default;
};

/// given: the layers lie as they are listed; by_flowering: the latest kind lowest.
enum class LayerOrder { given, by_flowering };

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
