#include "input/resolve.hpp"

#include <filesystem>

#include <fmt/core.h>

#include "base/error.hpp"
#include "input/file_reader.hpp"
#include "input/place_resolver.hpp"
#include "input/request_check.hpp"

namespace bulbwright::input {
namespace {

constexpr std::size_t data_file_limit = 20'000'000;

[[noreturn]] void refuse(const LocatedRequest& asked, std::string_view field,
                         const std::string& message) {
  throw InputError{{fault_at(asked, field, message)}};
}

int resolve_season(const LocatedRequest& asked, Hemisphere hemisphere) {
  check_season(asked, hemisphere);
  if (asked.request.season) return *asked.request.season;
  if (asked.request.plant) return season_of(*asked.request.plant, hemisphere);
  if (asked.request.flower) return season_of(asked.request.flower->first, hemisphere);
  refuse(asked, "season", "missing; say which autumn, for instance 2026, or give plant or flower");
}

std::optional<InputText> data_file(const std::string& folder, const char* name,
                                   InputFiles& inputs) {
  const std::string path = (std::filesystem::path{folder} / name).string();
  std::error_code ignored;
  if (!std::filesystem::exists(path, ignored)) return std::nullopt;
  return read_text(path, data_file_limit, inputs);
}

}  // namespace

Facts load_facts(const std::string& data_folder, InputFiles& inputs) {
  Facts facts{builtin_catalogue(), BloomTable::builtin(), load_places(data_folder, inputs)};
  if (data_folder.empty()) return facts;
  const auto taxa = data_file(data_folder, "taxa.csv", inputs);
  const auto blooms = data_file(data_folder, "bloom.csv", inputs);
  if (taxa) facts.catalogue = merged(facts.catalogue, taxa->text, taxa->name);
  if (blooms) facts.blooms.merge(BloomTable::parse(blooms->text, blooms->name));
  return facts;
}

PlaceCatalogue load_places(const std::string& data_folder, InputFiles& inputs) {
  PlaceCatalogue places = PlaceCatalogue::builtin();
  if (data_folder.empty()) return places;
  std::error_code ignored;
  if (!std::filesystem::is_directory(data_folder, ignored)) {
    throw InputError{{"", 0, 0},
                     fmt::format("--data: {} is no folder", bulbwright::in_quotes(data_folder))};
  }
  const auto has = [&](const char* name) {
    return std::filesystem::exists(std::filesystem::path{data_folder} / name, ignored);
  };
  if (!has("taxa.csv") && !has("bloom.csv") && !has("places.csv")) {
    throw InputError{{"", 0, 0},
                     fmt::format("--data: {} holds no taxa.csv, bloom.csv or places.csv",
                                 bulbwright::in_quotes(data_folder))};
  }
  if (const auto own = data_file(data_folder, "places.csv", inputs)) {
    places.add(parse_places_csv(own->text, own->name));
  }
  return places;
}

Setting resolve(const LocatedRequest& asked, const Facts& facts, InputFiles& inputs) {
  const std::vector<std::string_view> ids = facts.catalogue.ids();
  check_taxa(asked, ids);
  const std::optional<Place> place = resolve_place(asked, facts.places);
  std::optional<RecordedDays> records;
  if (asked.request.place->records_file) records = read_recorded_days(asked, inputs);
  auto latitude = latitude_of(asked, place);
  if (!latitude && records) latitude = records->summary.latitude;
  if (!latitude) {
    refuse(asked, "place.records", "needs a latitude beside it, in degrees, south negative");
  }
  const int season = resolve_season(asked, *latitude < 0.0 ? Hemisphere::south : Hemisphere::north);
  if (records) return setting_from_records(asked, place, season, *latitude, *records);
  return setting_from_place(*place, season, asked.request.place->exposure);
}

PlanContext context_of(const Facts& facts, const Setting& setting, Effort effort,
                       PackingCache& packings) {
  return {facts.catalogue, facts.blooms, setting, effort, packings};
}

}  // namespace bulbwright::input
