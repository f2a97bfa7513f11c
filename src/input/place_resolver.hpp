#pragma once

#include <optional>
#include <string>
#include <vector>

#include "climate/place.hpp"
#include "climate/place_season.hpp"
#include "climate/temperature_record.hpp"
#include "input/faults.hpp"
#include "input/input_files.hpp"
#include "input/located_request.hpp"

namespace bulbwright::input {

/// The climate that the zone, the site or the normals of a request name, moved by its offset; none
/// where it has records only, or where what it has is refused, with a fault.
std::optional<Place> resolve_place(const LocatedRequest& asked, const PlaceCatalogue& places,
                                   Faults& faults);

/// Path of the records file: a relative one in a pot file starts at the pot file's folder.
std::string records_path(const LocatedRequest& asked);

/// The latitude of a request: given, or of its place. None with bare records, unless NOAA's, which
/// tell it in the file.
std::optional<double> latitude_of(const LocatedRequest& asked, const std::optional<Place>& place);

/// Reads the records of a request. @throws InputError from the file; for one that cannot be read at
/// the field that names it.
RecordSummary read_records_of(const LocatedRequest& asked, InputFiles& inputs, const DaySink& sink);

/// A records file read whole.
struct RecordedDays {
  std::vector<RecordedDay> days;
  RecordSummary summary;
};
/// @throws InputError as read_records_of().
RecordedDays read_recorded_days(const LocatedRequest& asked, InputFiles& inputs);

/// The place's season of a request with records: their winters for `season` at `latitude`.
/// @throws InputError where they hold no winter.
PlaceSeason season_from_records(const LocatedRequest& asked, const std::optional<Place>& place,
                                int season, double latitude, const RecordedDays& records);

/// `request`, which has the place of `asked`, as it is written to `file`: a relative path of
/// records starts at that file's folder.
Request moved_to(const std::string& file, Request request, const LocatedRequest& asked);

}  // namespace bulbwright::input
