#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "base/calendar_day.hpp"
#include "base/enum_words.hpp"
#include "base/quantity.hpp"
#include "catalogue/bulb_state.hpp"
#include "catalogue/use.hpp"
#include "packing/choices.hpp"
#include "packing/pattern.hpp"

namespace bulbwright {

/// Layers as a file or the flags ask for them.

inline constexpr int most_counted_bulbs = 1000;  ///< `count` of a layer
inline constexpr std::size_t most_parts = 20;    ///< kinds of a mixture
inline constexpr double least_share = 0.001;
inline constexpr double most_share = 1000.0;

struct LayerPart {
  std::string taxon;   ///< an id of the catalogue, checked when resolved
  double share = 1.0;  ///< least_share to most_share
  /// Fixes the weeks of cold storage of this kind alone, over StorageRequest::weeks; 0 = none.
  std::optional<double> storage_weeks{};

  bool operator==(const LayerPart&) const = default;
};

struct LayerRequest {
  std::size_t listed_at = 0;        ///< index in the request, whatever the order of planting
  std::vector<LayerPart> parts;     ///< one, or several for a mixture
  std::optional<double> grade_cm;   ///< middle of the circumference asked for ("12", "12/14")
  std::optional<int> count;         ///< bulbs wanted, 1 to most_counted_bulbs; absent: what fits
  bool own = false;                 ///< the grower has them: neither ordered nor bought
  std::optional<Millimetres> gap;   ///< absent: the taxon's own
  bool forcing_gap = false;         ///< "gap": "forcing"
  std::optional<Millimetres> wall;  ///< clearance to the inner wall
  Arrange arrange = Arrange::mixed;
  Pattern pattern = Pattern::dense;  ///< rings or rows: of one kind, without count
  std::string label;
  std::string note;  ///< the grower's own words, carried to the sheet
  std::optional<Day> received;
  double cold_already_weeks = 0.0;
  Use use = Use::outdoors;
  BulbState state = BulbState::dry;

  bool operator==(const LayerRequest&) const = default;
};

/// given: the layers lie as they are listed; by_flowering: the latest kind lowest.
enum class LayerOrder { given, by_flowering };
constexpr auto enum_words(LayerOrder) {
  return words_to<LayerOrder::by_flowering>("given", "by-flowering");
}

}  // namespace bulbwright
