#pragma once

#include <string>

#include "bulbwright/catalogue.hpp"

namespace bulbwright::input {

/// A catalogue of thousands of taxa stays well under this.
inline constexpr std::size_t catalogue_file_limit = 20'000'000;

/// The built-in catalogue; with a folder (--data), its taxa.csv laid over it.
/// @throws InputError for a folder without a readable taxa.csv and for faults in it.
Catalogue load_catalogue(const std::string& data_folder);

}  // namespace bulbwright::input
