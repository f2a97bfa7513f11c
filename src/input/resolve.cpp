#include "input/resolve.hpp"

#include <filesystem>

#include <fmt/format.h>

#include "bulbwright/error.hpp"
#include "bulbwright/request_check.hpp"
#include "input/file_reader.hpp"

namespace bulbwright::input {
namespace {

constexpr std::size_t data_file_limit = 20'000'000;

[[noreturn]] void refuse(const PotFile& request, std::string_view field,
                         const std::string& message) {
  throw InputError{{fault_at(request, field, message)}};
}

Place own_normals(const PlaceRequest& request) {
  Place place;
  place.name = "your normals";
  place.latitude = request.latitude.value_or(45.0);
  place.normals = *request.normals;
  return place;
}

Place resolve_place(const PotFile& request, const PlaceCatalogue& places) {
  const PlaceRequest& place = *request.place;
  try {
    if (place.zone) return places.zone_profile(*place.zone, place.south, place.region);
  } catch (const InvalidValue& fault) {
    refuse(request, "place.zone", fault.expectation());
  }
  try {
    if (place.site) return places.find(*place.site);
  } catch (const InvalidValue& fault) {
    refuse(request, "place.site", fault.expectation());
  }
  if (place.normals) return own_normals(place);
  refuse(request, "place", "a zone, a site, normals or records are needed");
}

int resolve_season(const PotFile& request, Hemisphere hemisphere) {
  check_season(request, hemisphere);
  if (request.season) return *request.season;
  if (request.plant) return season_of(*request.plant, hemisphere);
  if (request.flower) return season_of(request.flower->first, hemisphere);
  refuse(request, "season",
         "missing; say which autumn, for instance 2026, or give plant or flower");
}

std::optional<InputText> data_file(const std::string& folder, const char* name) {
  const std::string path = (std::filesystem::path{folder} / name).string();
  std::error_code ignored;
  if (!std::filesystem::exists(path, ignored)) return std::nullopt;
  return read_text(path, data_file_limit);
}

}  // namespace

Facts load_facts(const std::string& data_folder) {
  Facts facts{builtin_catalogue(), BloomTable::builtin(), PlaceCatalogue::builtin()};
  if (data_folder.empty()) return facts;
  std::error_code ignored;
  if (!std::filesystem::is_directory(data_folder, ignored)) {
    throw InputError{{"", 0, 0},
                     fmt::format("--data: {} is no folder", bulbwright::quoted(data_folder))};
  }
  const auto taxa = data_file(data_folder, "taxa.csv");
  const auto places = data_file(data_folder, "places.csv");
  const auto blooms = data_file(data_folder, "bloom.csv");
  if (!taxa && !places && !blooms) {
    throw InputError{{"", 0, 0},
                     fmt::format("--data: {} holds no taxa.csv, bloom.csv or places.csv",
                                 bulbwright::quoted(data_folder))};
  }
  if (taxa) facts.catalogue = merged(facts.catalogue, taxa->text, taxa->name);
  if (blooms) facts.blooms.merge(BloomTable::parse(blooms->text, blooms->name));
  if (places) facts.places.add(parse_places_csv(places->text, places->name));
  return facts;
}

Setting resolve(const PotFile& request, const Facts& facts) {
  const std::vector<std::string_view> ids = facts.catalogue.ids();
  check_taxa(request, ids);
  const Place place = resolve_place(request, facts.places);
  const int season = resolve_season(request, bulbwright::hemisphere_of(place));
  return setting_from_place(place, season, request.place->exposure);
}

}  // namespace bulbwright::input
