#pragma once

#include <string>

#include <nlohmann/json_fwd.hpp>

#include "plan/request.hpp"

namespace bulbwright::input {

/// The pot file that asks for exactly `request`: reading it back gives the same values, to the last
/// bit. Keys in the order of docs/pot-file.md, defaults and a pot or layers not asked for left out;
/// lengths and temperatures in the unit that writes them shortest (mm or in, C or F). Ends with a
/// newline.
std::string write_pot_file(const Request& request);

/// The same object, for documents that hold pot files.
nlohmann::ordered_json pot_file_object(const Request& request);

}  // namespace bulbwright::input
