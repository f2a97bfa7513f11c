#pragma once

#include <optional>
#include <string>
#include <vector>

#include "climate/place.hpp"
#include "report/asked_flags.hpp"
#include "report/text_style.hpp"

namespace bulbwright::report {

/// What `places` found, ready to print.
struct PlacesReport {
  AskedFlags request;
  std::string question;          ///< in words: "all places", "the nearest to 37.8, -122.4"
  std::optional<Place> profile;  ///< of a zone asked for; `places` are then its stations
  std::vector<Place> places;
  std::vector<double> distance_km;  ///< beside places, or empty
};

/// A list; one place alone with all its figures.
std::string places_text(const PlacesReport& report, const TextStyle& style);
std::string places_json(const PlacesReport& report);
/// The columns of data/places.csv, so that the rows can be changed and given back with --data.
std::string places_csv(const PlacesReport& report);

}  // namespace bulbwright::report
