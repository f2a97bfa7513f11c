#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "base/error.hpp"
#include "input/yearless.hpp"
#include "plan/request.hpp"

namespace bulbwright::input {

/// Where each field stood, by path: "layers[1].grade"; "" is the whole file. A field from a flag
/// has the flag as its file ("--grade") and line 0.
using SourcePlaces = std::map<std::string, SourcePlace>;

/// A request with where each of its fields was written, for messages of later checks.
struct LocatedRequest {
  Request request;
  std::string file;  ///< name for messages; empty when the request came from flags alone
  SourcePlaces written_at;
  YearlessDays yearless;             ///< to be settled once the season is known
  std::vector<std::string> remarks;  ///< what was settled otherwise than it was written
  bool is_sound = true;              ///< every object is one, without unknown keys
  bool pot_is_sound = true;          ///< no value of the pot was refused
};

/// A value was given, sound or not.
bool given(const LocatedRequest& asked, std::string_view path);

/// "field: message" at the place of `field` (a path such as "place.zone"). A field that was not
/// given is placed where its parent stands.
InputFault fault_at(const LocatedRequest& asked, std::string_view field,
                    const std::string& message);

/// A value that turned out wrong only while planning, told where the request gave it; a fault of a
/// layer that nobody gave is one of the pot.
InputError located(const LocatedRequest& asked, const InvalidValue& fault);

/// What `work` returns. @throws InputError, located(), for an InvalidValue that it throws.
template <class Work>
auto with_faults_located(const LocatedRequest& asked, const Work& work) {
  try {
    return work();
  } catch (const InvalidValue& fault) {
    throw located(asked, fault);
  }
}

}  // namespace bulbwright::input
