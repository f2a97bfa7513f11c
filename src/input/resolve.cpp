#include "input/resolve.hpp"

#include <algorithm>
#include <array>
#include <filesystem>
#include <set>

#include <fmt/core.h>

#include "base/error.hpp"
#include "base/near_miss.hpp"
#include "base/text.hpp"
#include "input/file_reader.hpp"
#include "input/place_resolver.hpp"
#include "input/request_check.hpp"

namespace bulbwright::input {
namespace {

constexpr std::size_t data_file_limit = 20'000'000;

std::optional<int> season_of(const Request& request, Hemisphere hemisphere) {
  if (request.season) return request.season;
  if (request.plant) return bulbwright::season_of(*request.plant, hemisphere);
  if (request.flower) return bulbwright::season_of(request.flower->first, hemisphere);
  return std::nullopt;
}

std::optional<RecordedDays> records_of(const LocatedRequest& asked, InputFiles& inputs,
                                       Faults& faults) {
  if (!asked.request.place || !asked.request.place->records_file) return std::nullopt;
  try {
    return read_recorded_days(asked, inputs);
  } catch (const InputError& error) {
    faults.add(error.faults());
    return std::nullopt;
  }
}

/// The season, which needs the latitude to be known; days without a year are put into it.
std::optional<int> judged_season(LocatedRequest& asked, double latitude, Faults& faults) {
  const Request& request = asked.request;
  const Hemisphere hemisphere = latitude < 0.0 ? Hemisphere::south : Hemisphere::north;
  if (!hemisphere_of(*request.place)) faults.add(season_faults(asked, hemisphere));
  const auto season = season_of(request, hemisphere);
  if (asked.yearless.any()) {
    const char* field = asked.yearless.plant ? "plant" : "flower";
    if (!season) {
      faults.add({fault_at(asked, field,
                           "says no year; say which autumn in season, or write the day with its "
                           "year")});
      return std::nullopt;
    }
    asked.remarks = settle_years(asked, *season, hemisphere);
    if (request.flower && request.flower->last < request.flower->first) {
      faults.add({fault_at(asked, "flower", "the window ends before it starts")});
    }
  }
  const bool refused = given(asked, "season") || given(asked, "plant") || given(asked, "flower");
  if (!season && !refused) {
    faults.add({fault_at(asked, "season",
                         "missing; say which autumn, for instance 2026, or give plant or flower")});
  }
  return season;
}

constexpr std::array<std::string_view, 6> tables{"taxa.csv",  "genera.csv",   "places.csv",
                                                 "bloom.csv", "cautions.csv", "packs.csv"};

std::optional<InputText> data_file(const std::string& folder, std::string_view name,
                                   InputFiles& inputs) {
  const std::string path = (std::filesystem::path{folder} / name).string();
  std::error_code ignored;
  if (!std::filesystem::exists(path, ignored)) return std::nullopt;
  return read_text(path, data_file_limit, inputs);
}

/// Refuses what was meant for a table and would be passed over in silence: every other CSV file,
/// and names near those of the tables.
void check_data_folder(const std::string& folder) {
  std::error_code fault;
  std::vector<std::string> names;
  for (std::filesystem::directory_iterator at{folder, fault}, end; !fault && at != end;
       at.increment(fault)) {
    names.push_back(at->path().filename().string());
  }
  if (fault) {
    throw InputError{{"", 0, 0},
                     fmt::format("--data: {} is no folder that can be read: {}",
                                 path_in_quotes(folder), fault.message())};
  }
  std::sort(names.begin(), names.end());
  std::vector<InputFault> faults;
  bool any = false;
  for (const std::string& name : names) {
    if (std::find(tables.begin(), tables.end(), name) != tables.end()) {
      any = true;
      continue;
    }
    const std::string near = did_you_mean(name, tables);
    if (near.empty() && !lower_case(name).ends_with(".csv")) continue;
    faults.push_back({{"", 0, 0},
                      fmt::format("--data: {} is none of the tables that are read, {}{}",
                                  path_in_quotes((std::filesystem::path{folder} / name).string()),
                                  listed(tables), near)});
  }
  if (!faults.empty()) throw InputError{std::move(faults)};
  if (any) return;
  throw InputError{
      {"", 0, 0},
      fmt::format("--data: {} holds no {}", path_in_quotes(folder), listed(tables, "or"))};
}

/// Kinds and genera, lower case, by which tables match bulbs.
class KnownNames {
 public:
  explicit KnownNames(const Catalogue& catalogue) : names_{catalogue.ids()} {
    std::set<std::string> genera;
    for (const Taxon& taxon : catalogue.taxa()) genera.insert(lower_case(taxon.genus));
    genera_.assign(genera.begin(), genera.end());
    names_.insert(names_.end(), genera_.begin(), genera_.end());
  }
  [[nodiscard]] std::span<const std::string_view> all() const { return names_; }

 private:
  std::vector<std::string> genera_;
  std::vector<std::string_view> names_;
};

}  // namespace

Facts load_facts(const std::string& data_folder, InputFiles& inputs) {
  Facts facts{builtin_catalogue(), BloomTable::builtin(), load_places(data_folder, inputs),
              builtin_cautions(), builtin_packs()};
  if (data_folder.empty()) return facts;
  if (const auto own = data_file(data_folder, "genera.csv", inputs)) {
    const auto taxa = facts.catalogue.taxa();
    facts.catalogue = Catalogue{{taxa.begin(), taxa.end()},
                                facts.catalogue.genera().with(parse_genera(own->text, own->name))};
  }
  if (const auto own = data_file(data_folder, "taxa.csv", inputs)) {
    facts.catalogue = merged(facts.catalogue, own->text, own->name);
  }
  const std::vector<std::string_view> kinds = facts.catalogue.ids();
  const KnownNames names{facts.catalogue};
  if (const auto own = data_file(data_folder, "bloom.csv", inputs)) {
    facts.blooms.merge(BloomTable::parse(own->text, own->name, kinds));
  }
  if (const auto own = data_file(data_folder, "cautions.csv", inputs)) {
    facts.cautions = merged(std::move(facts.cautions), parse_cautions(own->text, own->name, kinds));
  }
  if (const auto own = data_file(data_folder, "packs.csv", inputs)) {
    facts.packs = merged(std::move(facts.packs), parse_packs(own->text, own->name, names.all()));
  }
  return facts;
}

PlaceCatalogue load_places(const std::string& data_folder, InputFiles& inputs) {
  PlaceCatalogue places = PlaceCatalogue::builtin();
  if (data_folder.empty()) return places;
  check_data_folder(data_folder);
  if (const auto own = data_file(data_folder, "places.csv", inputs)) {
    places.add(parse_places_csv(own->text, own->name));
  }
  return places;
}

PlaceSeason resolve(LocatedRequest& asked, const Facts& facts, InputFiles& inputs, Faults faults) {
  faults.add(settle_kinds(asked, facts.catalogue));
  const std::optional<Place> place = resolve_place(asked, facts.places, faults);
  const std::optional<RecordedDays> records = records_of(asked, inputs, faults);
  std::optional<double> latitude;
  if (asked.request.place) latitude = latitude_of(asked, place);
  if (!latitude && records) latitude = records->summary.latitude;
  if (!latitude && records && !place && faults.size() == 0) {
    faults.add({fault_at(asked, "place.records",
                         "needs a latitude beside it, in degrees, south negative")});
  }
  std::optional<int> season;
  if (latitude) season = judged_season(asked, *latitude, faults);
  faults.throw_if_any();
  if (records) return season_from_records(asked, place, *season, *latitude, *records);
  return season_at_place(*place, *season, asked.request.place->exposure);
}

PlanContext context_of(const Facts& facts, const PlaceSeason& place_season, Effort effort,
                       PackingCache& packings) {
  return {facts.catalogue, facts.blooms, place_season, effort, packings, facts.cautions};
}

}  // namespace bulbwright::input
