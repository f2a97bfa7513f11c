#include "input/pot_file_writer.hpp"

#include <array>
#include <charconv>

#include <nlohmann/json.hpp>

#include "input/pot_file_keys.hpp"

namespace bulbwright::input {
namespace {

using Json = nlohmann::ordered_json;

/// The shortest decimal that reads back as `value`, never with an exponent.
std::string shortest(double value) {
  std::array<char, 400> digits{};
  const auto end =
      std::to_chars(digits.data(), digits.data() + digits.size(), value, std::chars_format::fixed);
  return {digits.data(), end.ptr};
}

std::string length(Millimetres value) {
  const std::string in_mm = shortest(value.value());
  const double inches = rounded(value.value() / millimetres_per_inch, 0.001);
  const std::string in_inches = shortest(inches);
  const bool exact = inches * millimetres_per_inch == value.value();
  return exact && in_inches.size() < in_mm.size() ? in_inches + " in" : in_mm + " mm";
}

/// Of a place: metres where they come back exactly.
std::string height_above_sea(Millimetres value) {
  const double metres = value.value() / 1000.0;
  return metres * 1000.0 == value.value() ? shortest(metres) + " m" : length(value);
}

std::string length_pair(const LengthPair& pair) {
  return pair.paired ? length(pair.first) + " x " + length(pair.second) : length(pair.first);
}

std::string temperature(Celsius value) {
  const std::string in_c = shortest(value.value());
  const double fahrenheit = rounded(value.value() * 9.0 / 5.0 + 32.0, 0.001);
  const std::string in_f = shortest(fahrenheit);
  const bool exact = from_fahrenheit(fahrenheit) == value;
  return exact && in_f.size() < in_c.size() ? in_f + " F" : in_c + " C";
}

std::string difference(Kelvins value) {
  const std::string in_k = shortest(value.value());
  const double fahrenheit = rounded(value.value() * 9.0 / 5.0, 0.001);
  const std::string in_f = shortest(fahrenheit);
  const bool exact = fahrenheit * 5.0 / 9.0 == value.value();
  return exact && in_f.size() < in_k.size() ? in_f + " F" : in_k + " C";
}

std::string offset(const TemperatureOffset& offset) {
  if (offset.nights == offset.days) return difference(offset.nights);
  return difference(offset.nights) + ", " + difference(offset.days);
}

Json profile_level(const ProfileLevel& level, Shape shape) {
  Json json = Json::object();
  json["height"] = length(level.height);
  if (shape == Shape::half_round) {
    json["width"] = length(level.length);
    json["depth"] = length(level.width);
  } else {
    json["width"] = length(level.width);
    if (shape != Shape::round) json["length"] = length(level.length);
  }
  return json;
}

Json pot_json(const PotRequest& pot) {
  Json json = Json::object();
  if (!pot.name.empty()) json["name"] = pot.name;
  if (!pot.group.empty()) json["group"] = pot.group;
  if (!pot.note.empty()) json["note"] = pot.note;
  json["shape"] = word_of(pot.shape);
  if (pot.top) json["top"] = length_pair(*pot.top);
  if (pot.base) json["base"] = length_pair(*pot.base);
  if (pot.height) json["height"] = length(*pot.height);
  for (const ProfileLevel& level : pot.profile) {
    json["profile"].push_back(profile_level(level, pot.shape));
  }
  if (pot.corner > 0_mm) json["corner"] = length(pot.corner);
  if (pot.thickness) json["thickness"] = length(*pot.thickness);
  if (pot.headspace) json["headspace"] = length(*pot.headspace);
  if (!pot.material.empty()) json["material"] = pot.material;
  if (pot.last_crop) json["last_crop"] = *pot.last_crop;
  if (pot.used_mix != pot.last_crop.has_value()) {
    json["mix"] = mix_words[pot.used_mix ? 1 : 0];
  }
  return json;
}

Json place_json(const PlaceRequest& place) {
  Json json = Json::object();
  if (place.zone) json["zone"] = *place.zone;
  if (place.south) json["south"] = true;
  if (place.region != ZoneRegion::all) json["region"] = word_of(place.region);
  if (place.site) json["site"] = *place.site;
  if (place.near) {
    json["near"] = shortest(place.near->latitude) + ", " + shortest(place.near->longitude);
  }
  if (place.elevation) json["elevation"] = height_above_sea(*place.elevation);
  if (place.normals) {
    json["normals"] = {
        {"tmin", place.normals->tmin_c}, {"tmax", place.normals->tmax_c}, {"unit", unit_words[0]}};
  }
  if (place.offset) json["offset"] = offset(*place.offset);
  if (place.records_file) json["records"] = *place.records_file;
  if (place.latitude) json["latitude"] = *place.latitude;
  if (place.exposure != Exposure::open) {
    json["exposure"] = word_of(place.exposure);
  }
  return json;
}

Json part_json(const LayerPart& part) {
  Json json = Json::object();
  json["taxon"] = part.taxon;
  json["share"] = part.share;
  if (part.storage_weeks) json["storage_weeks"] = *part.storage_weeks;
  return json;
}

Json layer_json(const LayerRequest& layer) {
  Json json = Json::object();
  if (layer.parts.size() == 1) {
    json["taxon"] = layer.parts.front().taxon;
  } else {
    for (const LayerPart& part : layer.parts) json["mix"].push_back(part_json(part));
  }
  if (layer.grade_cm) json["grade"] = shortest(*layer.grade_cm);
  if (layer.count) json["count"] = *layer.count;
  if (layer.own) json["own"] = true;
  if (layer.forcing_gap) json["gap"] = "forcing";
  if (layer.gap) json["gap"] = length(*layer.gap);
  if (layer.wall) json["wall"] = length(*layer.wall);
  if (layer.pattern != Pattern::dense) {
    json["pattern"] = word_of(layer.pattern);
  }
  if (layer.arrange != Arrange::mixed) {
    json["arrange"] = word_of(layer.arrange);
  }
  if (!layer.label.empty()) json["label"] = layer.label;
  if (!layer.note.empty()) json["note"] = layer.note;
  if (layer.received) json["received"] = to_iso(*layer.received);
  if (layer.cold_already_weeks > 0.0) json["cold_already"] = layer.cold_already_weeks;
  if (layer.use != Use::outdoors) json["use"] = word_of(layer.use);
  if (layer.state != BulbState::dry) json["state"] = word_of(layer.state);
  if (layer.parts.size() == 1 && layer.parts.front().storage_weeks)
    json["storage_weeks"] = *layer.parts.front().storage_weeks;
  return json;
}

Json storage_json(const StorageRequest& storage) {
  Json json = Json::object();
  if (storage.temperature) json["temperature"] = temperature(*storage.temperature);
  if (storage.method) json["method"] = *storage.method;
  if (storage.weeks) json["weeks"] = *storage.weeks;
  return json;
}

std::string window(const DayWindow& days) {
  return days.first == days.last ? to_iso(days.first)
                                 : to_iso(days.first) + ".." + to_iso(days.last);
}

}  // namespace

Json pot_file_object(const Request& request) {
  Json json = Json::object();
  if (request.pot != PotRequest{}) json["pot"] = pot_json(request.pot);
  if (request.place) json["place"] = place_json(*request.place);
  if (request.season) json["season"] = *request.season;
  if (request.plant) json["plant"] = to_iso(*request.plant);
  if (request.flower) json["flower"] = window(*request.flower);
  if (request.spread) json["spread"] = true;
  if (request.order != LayerOrder::given) json["order"] = word_of(request.order);
  if (Json storage = storage_json(request.storage); !storage.empty()) json["storage"] = storage;
  if (!request.pests.empty()) {
    Json pests = Json::array();
    for (const Pest pest : request.pests) pests.push_back(word_of(pest));
    json["pests"] = std::move(pests);
  }
  if (request.winter) json["winter"] = word_of(*request.winter);
  for (const LayerRequest& layer : request.layers) json["layers"].push_back(layer_json(layer));
  return json;
}

std::string write_pot_file(const Request& request) {
  // A file name may hold bytes that are no UTF-8, which JSON cannot.
  return pot_file_object(request).dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace bulbwright::input
