// merged(): the flags laid over a pot file.
#include <algorithm>
#include <iterator>
#include <vector>

#include "cli/layer_option.hpp"
#include "cli/pot_options.hpp"
#include "input/field_values.hpp"
#include "input/file_reader.hpp"
#include "input/pot_file_keys.hpp"
#include "input/pot_file_parts.hpp"
#include "input/pot_file_reader.hpp"
#include "input/request_check.hpp"
#include "pot/pot_material.hpp"

namespace bulbwright::cli {
namespace {

using input::Faults;
using input::Field;
using input::LocatedRequest;

class Merge {
 public:
  Merge(LocatedRequest asked, const PotOptions& options, Faults& faults)
      : asked_{std::move(asked)}, request_{asked_.request}, options_{options}, faults_{faults} {}

  LocatedRequest result(Need need) && {
    const std::size_t before = faults_.size();
    lay_pot();
    asked_.pot_is_sound = asked_.pot_is_sound && faults_.size() == before;
    lay_place();
    lay_dates();
    lay_layers();
    lay_storage();
    lay_winter();
    faults_.add(input::contradictions(asked_));
    if (need != Need::whatever_is_given) {
      faults_.add(input::omissions(
          asked_, need == Need::all ? input::Layers::needed : input::Layers::sought));
    }
    return std::move(asked_);
  }

 private:
  /// The field of a flag; notes that `path` now comes from it.
  Field from(const char* flag, const std::string& path) {
    asked_.written_at[path] = SourcePlace{flag, 0, 0};
    return {flag, {}};
  }
  void forget(std::string_view path) {
    // The path itself and what stands below it.
    for (auto at = asked_.written_at.begin(); at != asked_.written_at.end();) {
      const std::string_view key = at->first;
      const bool below =
          key.starts_with(path) &&
          (key.size() == path.size() || key[path.size()] == '.' || key[path.size()] == '[');
      at = below ? asked_.written_at.erase(at) : std::next(at);
    }
  }

  void lay_pot() {
    PotRequest& pot = request_.pot;
    if (options_.name) {
      pot.name =
          input::read_plain_text(from("--name", "pot.name"), *options_.name, faults_).value_or("");
    }
    if (options_.shape) {
      if (const auto shape = input::read_word<Shape>(from("--shape", "pot.shape"), *options_.shape,
                                                     "shape", faults_)) {
        pot.shape = *shape;
      }
    }
    if (options_.top || options_.base || options_.height) {
      pot.profile.clear();
      forget("pot.profile");
    }
    lay_sizes(pot);
    if (options_.material) lay_material(*options_.material);
    if (options_.last_crop) lay_last_crop(*options_.last_crop);
  }

  void lay_sizes(PotRequest& pot) {
    const auto pair = [&](const char* flag, const char* path, const std::string& text) {
      return input::read_length_pair(from(flag, path), text, input::pot_size, faults_);
    };
    const auto small = [&](const char* flag, const char* path, const std::string& text) {
      return input::read_length(from(flag, path), text, input::small_length, faults_);
    };
    if (options_.top) pot.top = pair("--top", "pot.top", *options_.top);
    if (options_.base) pot.base = pair("--base", "pot.base", *options_.base);
    if (options_.height) {
      pot.height = input::read_length(from("--height", "pot.height"), *options_.height,
                                      input::pot_size, faults_);
    }
    if (options_.corner)
      pot.corner = small("--corner", "pot.corner", *options_.corner).value_or(0_mm);
    if (options_.thickness)
      pot.thickness = small("--thickness", "pot.thickness", *options_.thickness);
    if (options_.headspace)
      pot.headspace = small("--headspace", "pot.headspace", *options_.headspace);
  }

  void lay_material(const std::string& text) {
    std::vector<std::string_view> names;
    for (const PotMaterial& material : known_materials()) names.push_back(material.name);
    const auto found =
        input::read_word(from("--material", "pot.material"), text, names, "material", faults_);
    if (found) request_.pot.material = names[*found];
  }

  void lay_last_crop(const std::string& text) {
    const Field field = from("--last-crop", "pot.last_crop");
    const auto crop = input::read_plain_text(field, text, faults_);
    if (!crop) return;
    const std::string genus = lower_case(trimmed(*crop));
    if (genus.empty()) {
      faults_.add(field, "empty; expected a genus such as tulipa");
      return;
    }
    request_.pot.last_crop = genus;
    if (!asked_.written_at.contains("pot.mix")) request_.pot.used_mix = true;
  }

  void lay_place() {
    const PotOptions& o = options_;
    if (!o.zone && !o.site && !o.near && !o.elevation && !o.offset && !o.records && !o.latitude &&
        !o.exposure && !o.south && !o.region) {
      return;
    }
    PlaceRequest place = request_.place.value_or(PlaceRequest{});
    if (o.zone || o.site || o.near) {
      const Exposure exposure = place.exposure;
      place = PlaceRequest{};
      place.exposure = exposure;
      const auto kept = asked_.written_at.find("place.exposure");
      const auto kept_place = kept == asked_.written_at.end() ? std::optional<SourcePlace>{}
                                                              : std::optional{kept->second};
      forget("place");
      if (kept_place) asked_.written_at["place.exposure"] = *kept_place;
    }
    if (o.zone) place.zone = input::read_zone(from("--zone", "place.zone"), *o.zone, faults_);
    if (o.site) {
      const Field field = from("--site", "place.site");
      if (const auto site = named(field, *o.site)) {
        place.site = input::read_plain_text(field, *site, faults_);
      }
    }
    if (o.near) {
      place.near = input::read_position(from("--near", "place.near"), *o.near, faults_);
    }
    if (o.elevation) {
      place.elevation = input::read_length(from("--elevation", "place.elevation"), *o.elevation,
                                           input::height_of_place, faults_);
    }
    if (o.offset) {
      place.offset = input::read_offset(from("--offset", "place.offset"), *o.offset, faults_);
    }
    if (o.records) place.records_file = named(from("--records", "place.records"), *o.records);
    if (o.latitude) {
      place.latitude = input::read_decimal(from("--latitude", "place.latitude"), *o.latitude, -90.0,
                                           90.0, faults_);
    }
    if (o.exposure) {
      if (const auto word = input::read_word<Exposure>(from("--exposure", "place.exposure"),
                                                       *o.exposure, "exposure", faults_)) {
        place.exposure = *word;
      }
    }
    if (o.region) {
      if (const auto word = input::read_word<ZoneRegion>(from("--region", "place.region"),
                                                         *o.region, "region", faults_)) {
        place.region = *word;
      }
    }
    if (o.south) {
      (void)from("--south", "place.south");
      place.south = true;
    }
    request_.place = place;
  }

  std::optional<std::string> named(const Field& field, const std::string& text) {
    if (!trimmed(text).empty()) return text;
    faults_.add(field, "empty; expected a name");
    return std::nullopt;
  }

  void lay_dates() {
    const PotOptions& o = options_;
    if (o.plant || o.flower) {
      const bool no_year = (!o.plant || input::says_no_year(*o.plant)) &&
                           (!o.flower || input::says_no_year(*o.flower));
      request_.plant.reset();
      request_.flower.reset();
      asked_.yearless.plant.reset();
      asked_.yearless.flower.reset();
      forget("plant");
      forget("flower");
      if (!no_year) {
        request_.season.reset();
        forget("season");
      }
    }
    if (o.season) {
      // The file's own days go along, so that last year's pot is this year's.
      input::forget_years(asked_);
      const Field field = from("--season", "season");
      if (const auto year = input::read_decimal(field, *o.season, first_year, last_year, faults_)) {
        request_.season =
            input::read_whole_number(field, *year, *o.season, first_year, last_year, faults_);
      }
    }
    if (o.plant) input::read_plant(from("--plant", "plant"), *o.plant, asked_, faults_);
    if (o.flower) input::read_flower(from("--flower", "flower"), *o.flower, asked_, faults_);
    if (o.spread) {
      (void)from("--spread", "spread");
      request_.spread = true;
    }
  }

  void lay_layers() {
    if (!options_.layers.empty()) {
      request_.layers.clear();
      forget("layers");
      (void)from("--layer", "layers");
    }
    if (options_.layers.size() > input::most_layers) {
      faults_.add(Field{"--layer", {}}, "given more than 20 times; expected at most 20 layers");
      return;
    }
    for (const std::string& text : options_.layers) {
      if (auto layer = read_layer_option(text, faults_)) request_.layers.push_back(*layer);
    }
    if (options_.order) {
      const auto order = input::read_word<LayerOrder>(from("--order", "order"), *options_.order,
                                                      "order of layers", faults_);
      if (order) request_.order = *order;
    }
    if (options_.gap) lay_gap(*options_.gap);
    if (options_.wall) {
      const auto wall =
          input::read_length(Field{"--wall", {}}, *options_.wall, input::small_length, faults_);
      for (LayerRequest& layer : request_.layers) layer.wall = wall;
    }
  }

  void lay_gap(const std::string& text) {
    const bool forcing = lower_case(trimmed(text)) == "forcing";
    const auto gap =
        forcing ? std::nullopt
                : input::read_length(Field{"--gap", {}}, text, input::small_length, faults_);
    for (LayerRequest& layer : request_.layers) {
      layer.forcing_gap = forcing;
      layer.gap = gap;
    }
  }

  void lay_storage() {
    StorageRequest& storage = request_.storage;
    if (options_.storage_temperature) {
      storage.temperature =
          input::read_storage_temperature(from("--storage-temperature", "storage.temperature"),
                                          *options_.storage_temperature, faults_);
    }
    if (options_.storage_method) {
      storage.method = input::read_plain_text(from("--storage-method", "storage.method"),
                                              *options_.storage_method, faults_);
    }
    if (options_.storage_weeks) {
      storage.weeks = input::read_decimal(from("--storage-weeks", "storage.weeks"),
                                          *options_.storage_weeks, 0.0, 60.0, faults_);
      for (LayerRequest& layer : request_.layers) {
        for (LayerPart& part : layer.parts) part.storage_weeks.reset();
      }
    }
  }

  void lay_winter() {
    if (!options_.pests.empty()) {
      request_.pests.clear();
      forget("pests");
    }
    for (const std::string_view text : each_of(options_.pests)) {
      const auto pest =
          input::read_word<Pest>(from("--pest", "pests"), text, "known pest", faults_);
      if (!pest) continue;
      if (std::find(request_.pests.begin(), request_.pests.end(), *pest) == request_.pests.end()) {
        request_.pests.push_back(*pest);
      }
    }
    if (options_.winter) {
      request_.winter = input::read_word<WinterRain>(from("--winter", "winter"), *options_.winter,
                                                     "kind of winter", faults_);
    }
    if (!options_.wet_winter) return;
    if (options_.winter && request_.winter != WinterRain::wet) {
      faults_.add(Field{"--wet-winter", {}}, "contradicts --winter; expected one of the two");
    }
    request_.winter = WinterRain::wet;
  }

  LocatedRequest asked_;
  Request& request_;
  const PotOptions& options_;
  Faults& faults_;
};

}  // namespace

LocatedRequest merged(std::optional<LocatedRequest> file, const PotOptions& options, Need need,
                      Faults& faults) {
  return Merge{std::move(file).value_or(LocatedRequest{}), options, faults}.result(need);
}

LocatedRequest pot_request(const std::optional<std::string>& path, const PotOptions& options,
                           input::InputFiles& inputs, Need need, Faults& faults) {
  std::optional<LocatedRequest> file;
  if (path) {
    const input::InputText read = input::read_text(*path, input::pot_file_limit, inputs);
    file = input::read_pot_file(read.text, read.name, faults);
  }
  LocatedRequest asked = merged(std::move(file), options, need, faults);
  if (path == "-" && asked.request.place && asked.request.place->records_file == "-") {
    faults.add({input::fault_at(asked, "place.records",
                                "standard input is read once, and the pot file is read from it")});
    asked.request.place->records_file.reset();
  }
  return asked;
}

}  // namespace bulbwright::cli
