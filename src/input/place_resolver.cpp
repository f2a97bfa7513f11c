#include "input/place_resolver.hpp"

#include <filesystem>
#include <vector>

#include <fmt/core.h>

#include "climate/frost_climate.hpp"
#include "climate/place_near.hpp"
#include "climate/place_search.hpp"
#include "climate/record_offset.hpp"
#include "climate/recorded_winters.hpp"
#include "input/file_reader.hpp"
#include "input/records_reader.hpp"
#include "input/request_check.hpp"

namespace bulbwright::input {
namespace {

[[noreturn]] void refuse(const LocatedRequest& asked, std::string_view field,
                         const std::string& message) {
  throw InputError{{fault_at(asked, field, message)}};
}

/// The climate named, with the normals as they are.
std::optional<Place> place_named(const LocatedRequest& asked, const PlaceCatalogue& places,
                                 Faults& faults) {
  if (!asked.request.place) return std::nullopt;
  const PlaceRequest& place = *asked.request.place;
  const StationTable stations = StationTable::builtin();
  std::string field = place.zone ? "place.zone" : place.site ? "place.site" : "place.near";
  try {
    if (place.zone) return places.zone_profile(*place.zone, place.south, place.region);
    if (place.site) return PlaceSearch{places, stations}.find(*place.site);
    std::optional<double> elevation_m;
    if (place.elevation) elevation_m = place.elevation->value() / 1000.0;
    if (place.near) return place_near(stations, places.places(), *place.near, elevation_m);
  } catch (const InvalidValue& fault) {
    if (fault.field() == "elevation") field = "place.elevation";
    faults.add({fault_at(asked, field, fault.expectation())});
    return std::nullopt;
  }
  if (!place.normals) return std::nullopt;
  Place own;
  own.name = "your normals";
  own.latitude = place.latitude.value_or(45.0);
  own.normals = *place.normals;
  own.source = "the grower's own";
  return own;
}

}  // namespace

std::optional<Place> resolve_place(const LocatedRequest& asked, const PlaceCatalogue& places,
                                   Faults& faults) {
  std::optional<Place> place = place_named(asked, places, faults);
  if (!place || !asked.request.place->offset) return place;
  try {
    return moved_by(std::move(*place), *asked.request.place->offset);
  } catch (const InvalidValue& fault) {
    faults.add({fault_at(asked, "place.offset", fault.expectation())});
    return std::nullopt;
  }
}

std::string records_path(const LocatedRequest& asked) {
  const std::string& path = *asked.request.place->records_file;
  const auto written = asked.written_at.find("place.records");
  const bool in_file = written != asked.written_at.end() && written->second.line > 0;
  const std::filesystem::path records{path};
  if (!in_file || records.is_absolute() || path == "-") return path;
  return (std::filesystem::path{asked.file}.parent_path() / records).string();
}

Request moved_to(const std::string& file, Request request, const LocatedRequest& asked) {
  if (!request.place || !request.place->records_file) return request;
  const std::filesystem::path records{records_path(asked)};
  if (records == "-" || records.is_absolute()) return request;
  const std::filesystem::path folder = std::filesystem::path{file}.parent_path();
  std::error_code fault;
  std::filesystem::path moved =
      std::filesystem::proximate(records, folder.empty() ? "." : folder, fault);
  if (fault) moved = std::filesystem::absolute(records, fault);
  request.place->records_file = moved.lexically_normal().string();
  return request;
}

std::optional<double> latitude_of(const LocatedRequest& asked, const std::optional<Place>& place) {
  if (asked.request.place->latitude) return asked.request.place->latitude;
  if (place) return place->latitude;
  return std::nullopt;
}

RecordSummary read_records_of(const LocatedRequest& asked, InputFiles& inputs,
                              const DaySink& sink) {
  try {
    return read_records(records_path(asked), inputs, sink);
  } catch (const UnreadableFile& fault) {
    throw InputError{{fault_at(asked, "place.records", fault.what())}};
  }
}

RecordedDays read_recorded_days(const LocatedRequest& asked, InputFiles& inputs) {
  RecordedDays records;
  records.summary = read_records_of(
      asked, inputs,
      [&](const RecordedDay& day, const RecordSummary&) { records.days.push_back(day); });
  return records;
}

PlaceSeason season_from_records(const LocatedRequest& asked, const std::optional<Place>& place,
                                int season, double latitude, const RecordedDays& records) {
  const std::vector<RecordedDay>& days = records.days;
  PlaceSeason place_season;
  try {
    RecordedWinters recorded = winters_from_record(days, latitude, season, place);
    place_season.winters = std::move(recorded.winters);
    place_season.normal = recorded.normal;
    place_season.mild = recorded.mild;
    place_season.cold = recorded.cold;
    place_season.measured_until = recorded.measured_until;
    place_season.recorded = recorded.recorded;
    place_season.basis = std::move(recorded.basis);
  } catch (const InvalidValue& fault) {
    refuse(asked, "place.records", fault.expectation());
  }
  if (place) {
    RecordComparison comparison{*place};
    for (const RecordedDay& day : days) comparison.add(day);
    place_season.account = account_of(*place);
    place_season.account.record_offset = comparison.result();
  }
  const std::string& station = records.summary.station;
  place_season.label = place             ? fmt::format("your records, {}", place->name)
                       : station.empty() ? "your records"
                                         : station;
  place_season.latitude = latitude;
  place_season.hemisphere = latitude < 0.0 ? Hemisphere::south : Hemisphere::north;
  place_season.season = season;
  place_season.exposure = asked.request.place->exposure;
  // A record with a winter knows a month.
  place_season.frost = RecordedNormals{days}.frost(latitude, place).value_or(FrostClimate{});
  return place_season;
}

}  // namespace bulbwright::input
