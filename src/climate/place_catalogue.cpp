#include <algorithm>

#include <fmt/core.h>

#include "base/near_miss.hpp"
#include "climate/place.hpp"
#include "climate/place_names.hpp"
#include "climate/position.hpp"

namespace bulbwright::embedded {
extern const std::string_view places_csv;
}

namespace bulbwright {
namespace {

[[noreturn]] void refuse_ambiguous(std::string_view text, const std::vector<const Place*>& found) {
  constexpr std::size_t most = 10;
  std::string names;
  for (std::size_t i = 0; i < std::min(most, found.size()); ++i) {
    names += fmt::format("{}\"{}\"", i > 0 ? ", " : "", found[i]->name);
  }
  if (found.size() > most) names += fmt::format(" and {} more", found.size() - most);
  throw InvalidValue{"site",
                     fmt::format("{} fits {} places: {}", in_quotes(text), found.size(), names)};
}

}  // namespace

PlaceCatalogue::PlaceCatalogue(std::vector<Place> places) : places_{std::move(places)} {}

PlaceCatalogue PlaceCatalogue::builtin() {
  return PlaceCatalogue{parse_places_csv(embedded::places_csv, "places.csv")};
}

void PlaceCatalogue::add(std::vector<Place> places) {
  for (Place& place : places) {
    const std::string name = folded_name(place.name);
    const auto same = std::find_if(places_.begin(), places_.end(), [&](const Place& known) {
      return folded_name(known.name) == name;
    });
    if (same != places_.end()) {
      *same = std::move(place);
    } else {
      places_.push_back(std::move(place));
    }
  }
}

std::vector<const Place*> PlaceCatalogue::named(std::string_view text) const {
  const std::string wanted = folded_name(text);
  std::vector<const Place*> towns, parts;
  for (const Place& place : places_) {
    const std::string name = folded_name(place.name);
    if (name == wanted) return {&place};
    if (wanted.empty()) continue;
    if (town_of(name) == wanted) towns.push_back(&place);
    if (name.find(wanted) != std::string::npos) parts.push_back(&place);
  }
  return towns.empty() ? parts : towns;
}

const Place& PlaceCatalogue::find(std::string_view text) const {
  const std::vector<const Place*> found = named(text);
  if (found.size() == 1) return *found.front();
  if (found.size() > 1) refuse_ambiguous(text, found);
  std::vector<std::string_view> names;
  for (const Place& place : places_) names.push_back(place.name);
  for (const Place& place : places_) names.push_back(town_of(place.name));
  throw InvalidValue{
      "site", fmt::format("no place is named {}{}", in_quotes(text), did_you_mean(text, names))};
}

std::vector<PlaceCatalogue::Near> PlaceCatalogue::nearest(double latitude, double longitude,
                                                          std::size_t count) const {
  std::vector<Near> all;
  for (const Place& place : places_) {
    const double km =
        bulbwright::distance_km({latitude, longitude}, {place.latitude, place.longitude});
    all.push_back({&place, rounded(km, 0.1)});
  }
  std::stable_sort(all.begin(), all.end(),
                   [](const Near& a, const Near& b) { return a.distance_km < b.distance_km; });
  all.resize(std::min(count, all.size()));
  return all;
}

}  // namespace bulbwright
