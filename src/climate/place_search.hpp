#pragma once

#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

#include "climate/place.hpp"
#include "climate/position.hpp"
#include "climate/station_table.hpp"

namespace bulbwright {

/// Looks places up by name or position, in the catalogue first and then in the table of stations.
/// A station of the table within 2 km of a place of the catalogue is that place under another name:
/// lists show the catalogue's.
class PlaceSearch {
 public:
  PlaceSearch(const PlaceCatalogue& catalogue, const StationTable& stations)
      : catalogue_{catalogue}, stations_{stations} {}

  /// The place with rain of the stations around it where it has none of its own.
  [[nodiscard]] Place with_rain(Place place) const;

  /// The place that `text` names, with rain: as PlaceCatalogue::find(), else the only station of
  /// that name (with or without state or country), else the only one with all its words.
  /// @throws InvalidValue ("site") with the candidates, ten at most, or a near miss.
  [[nodiscard]] Place find(std::string_view text) const;

  struct Found {
    Place place;
    std::optional<double> distance_km;  ///< where a position was asked for
  };
  /// Places with every word of `text`: at the beginning of a word of the name, the state or the
  /// country; as a zone; and two letters as the ISO code of a country, or beside other words also
  /// as a state or province ("US", "US-CA", "Chico CA"). In the order of the catalogue and the
  /// table, or nearest first where a position is given. `most` bounds the answer.
  [[nodiscard]] std::vector<Found> with_words(std::string_view text,
                                              std::optional<GeoPoint> position,
                                              std::size_t most) const;

  /// The nearest `count` places, nearest first.
  [[nodiscard]] std::vector<Found> nearest(GeoPoint position, std::size_t count) const;

 private:
  [[nodiscard]] bool has_other_name(std::size_t station) const;

  const PlaceCatalogue& catalogue_;
  const StationTable& stations_;
};

}  // namespace bulbwright
