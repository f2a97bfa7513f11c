#include "climate/place_search.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/core.h>

#include "base/error.hpp"
#include "base/near_miss.hpp"
#include "climate/place_names.hpp"
#include "climate/place_near.hpp"
#include "climate/regions.hpp"

namespace bulbwright {
namespace {

constexpr double same_place_km = 2.0;
constexpr std::size_t most_candidates = 10;

/// The words asked for, matched against one place.
class Words {
 public:
  Words(std::string_view text, const Regions& regions) : regions_{regions} {
    std::string word;
    for (const char c : folded_name(text) + " ") {
      if (c != ' ' && c != ',') {
        word += c;
      } else if (!word.empty()) {
        words_.push_back(std::move(word));
        word.clear();
      }
    }
  }

  [[nodiscard]] bool empty() const { return words_.empty(); }

  [[nodiscard]] bool fit(std::string_view name, std::string_view country, std::string_view region,
                         std::string_view zone) const {
    const std::string folded = folded_name(name);
    return std::all_of(words_.begin(), words_.end(), [&](const std::string& word) {
      return fits(word, folded, country, region, zone);
    });
  }

 private:
  [[nodiscard]] bool fits(const std::string& word, std::string_view name, std::string_view country,
                          std::string_view region, std::string_view zone) const {
    if (word == zone) return true;
    std::string code = word;
    for (char& c : code) c = c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
    if (code == "UK") code = "GB";  // the code that people take for it
    if (code.size() == 2 && !regions_.name(code).empty()) {
      // An ISO code is that country alone: US is not Austria.
      return code == country || (words_.size() > 1 && code == region);
    }
    if (code.size() == 2 && words_.size() > 1 && code == region) return true;
    if (code.size() == 5 && code[2] == '-' && !regions_.name(code).empty()) {
      return code == fmt::format("{}-{}", country, region);
    }
    return begins_a_word(name, word) ||
           begins_a_word(folded_name(regions_.name(country, region)), word) ||
           begins_a_word(folded_name(regions_.name(country)), word);
  }

  const Regions& regions_;
  std::vector<std::string> words_;
};

std::string shown(const Station& station, const Regions& regions) {
  return fmt::format("{}, {}", station.name, regions.behind_town(station.country, station.region));
}

/// The candidates, each with its country; positions tell two of one name apart.
[[noreturn]] void refuse_several(std::string_view text, const std::vector<Station>& found,
                                 std::size_t count, const Regions& regions) {
  std::string names;
  for (std::size_t i = 0; i < found.size(); ++i) {
    names += fmt::format("{}\"{}\" ({}, {})", i > 0 ? ", " : "", shown(found[i], regions),
                         found[i].country, to_text(found[i].position));
  }
  if (count > found.size()) names += fmt::format(" and {} more", count - found.size());
  throw InvalidValue{
      "site",
      fmt::format("{} fits {} stations: {}; give one of the names, or near with the position",
                  in_quotes(text), count, names)};
}

std::string without_extra(std::string_view folded) {
  std::string out;
  for (const std::string& word : words_of_name(folded)) out += (out.empty() ? "" : " ") + word;
  return out;
}

}  // namespace

bool PlaceSearch::has_other_name(std::size_t station) const {
  const GeoPoint position = stations_.position(station);
  const auto& places = catalogue_.places();
  return std::any_of(places.begin(), places.end(), [&](const Place& place) {
    return std::abs(place.latitude - position.latitude) < 0.05 &&
           bulbwright::distance_km({place.latitude, place.longitude}, position) <= same_place_km;
  });
}

Place PlaceSearch::with_rain(Place place) const {
  if (!place.rain_mm) {
    place.rain_mm = rain_near(stations_, {place.latitude, place.longitude}, place.elevation_m);
  }
  return place;
}

Place PlaceSearch::find(std::string_view text) const {
  if (!catalogue_.named(text).empty()) return with_rain(catalogue_.find(text));
  const Regions regions = Regions::builtin();
  const std::string wanted = without_extra(folded_name(text));
  if (wanted.empty()) return catalogue_.find(text);  // which tells the near miss
  const Words words{text, regions};
  std::vector<std::size_t> named, with_words;
  for (std::size_t i = 0; i < stations_.size(); ++i) {
    const std::string name = without_extra(folded_name(stations_.name(i)));
    const bool begins = wanted.starts_with(name);
    if (name == wanted ||
        (begins && without_extra(folded_name(shown(stations_.station(i), regions))) == wanted)) {
      named.push_back(i);
    } else if (words.fit(stations_.name(i), stations_.country(i), stations_.region(i), "")) {
      with_words.push_back(i);
    }
  }
  const auto& found = named.empty() ? with_words : named;
  if (found.size() == 1) return place_of(stations_.station(found.front()), catalogue_.places());
  if (found.empty()) return catalogue_.find(text);
  std::vector<Station> candidates;
  for (const std::size_t i : found) {
    if (candidates.size() < most_candidates) candidates.push_back(stations_.station(i));
  }
  refuse_several(text, candidates, found.size(), regions);
}

std::vector<PlaceSearch::Found> PlaceSearch::with_words(std::string_view text,
                                                        std::optional<GeoPoint> position,
                                                        std::size_t most) const {
  const Regions regions = Regions::builtin();
  const Words words{text, regions};
  struct Hit {
    std::size_t index;
    bool of_catalogue;
    double distance_km;
  };
  std::vector<Hit> hits;
  const auto add = [&](std::size_t index, bool of_catalogue, GeoPoint there) {
    hits.push_back(
        {index, of_catalogue, position ? bulbwright::distance_km(*position, there) : 0.0});
  };
  const auto& places = catalogue_.places();
  for (std::size_t i = 0; i < places.size(); ++i) {
    const Place& place = places[i];
    if (!words.fit(place.name, place.country, "", place.zone)) continue;
    add(i, true, {place.latitude, place.longitude});
  }
  for (std::size_t i = 0; i < stations_.size(); ++i) {
    if (words.fit(stations_.name(i), stations_.country(i), stations_.region(i), "") &&
        !has_other_name(i)) {
      add(i, false, stations_.position(i));
    }
  }
  std::stable_sort(hits.begin(), hits.end(),
                   [](const Hit& a, const Hit& b) { return a.distance_km < b.distance_km; });
  std::vector<Found> found;
  for (const Hit& hit : hits) {
    if (found.size() == most) break;
    found.push_back({hit.of_catalogue ? with_rain(places[hit.index])
                                      : place_of(stations_.station(hit.index), places),
                     {}});
    if (position) found.back().distance_km = rounded(hit.distance_km, 0.1);
  }
  return found;
}

std::vector<PlaceSearch::Found> PlaceSearch::nearest(GeoPoint position, std::size_t count) const {
  std::vector<Found> found;
  for (const auto& near : catalogue_.nearest(position.latitude, position.longitude, count)) {
    found.push_back({*near.place, near.distance_km});
  }
  // Up to `count` of the table may bear the catalogue's name.
  for (const auto& near : stations_.nearest(position, 2 * count)) {
    if (has_other_name(near.index)) continue;
    found.push_back({place_of(stations_.station(near.index), catalogue_.places()),
                     rounded(near.distance_km, 0.1)});
  }
  std::stable_sort(found.begin(), found.end(),
                   [](const Found& a, const Found& b) { return a.distance_km < b.distance_km; });
  if (found.size() > count) found.resize(count);
  for (Found& one : found) one.place = with_rain(std::move(one.place));
  return found;
}

}  // namespace bulbwright
