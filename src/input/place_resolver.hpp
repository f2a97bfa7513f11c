#pragma once

#include <optional>
#include <string>
#include <vector>

#include "climate/place.hpp"
#include "climate/setting.hpp"
#include "climate/temperature_record.hpp"
#include "input/input_files.hpp"
#include "plan/request.hpp"

namespace bulbwright::input {

/// The climate that the zone, the site or the normals of a request name; none where it has records
/// only. @throws InputError at the field at fault.
std::optional<Place> resolve_place(const PotFile& request, const PlaceCatalogue& places);

/// Path of the records file: a relative one in a pot file starts at the pot file's folder.
std::string records_path(const PotFile& request);

/// The latitude of a request: given, or of its place. None with bare records, unless NOAA's, which
/// tell it in the file.
std::optional<double> latitude_of(const PotFile& request, const std::optional<Place>& place);

/// A records file read whole.
struct RecordedDays {
  std::vector<RecordedDay> days;
  RecordSummary summary;
};
/// @throws InputError from the file.
RecordedDays read_recorded_days(const PotFile& request, InputFiles& inputs);

/// The setting of a request with records: their winters for `season` at `latitude`.
/// @throws InputError where they hold no winter.
Setting setting_from_records(const PotFile& request, const std::optional<Place>& place, int season,
                             double latitude, const RecordedDays& records);

/// The request as it is written to `file`: a relative path of records starts at that file's folder.
PotFile moved_to(PotFile request, const std::string& file);

}  // namespace bulbwright::input
