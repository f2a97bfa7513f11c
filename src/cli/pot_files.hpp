#pragma once

#include <memory>
#include <string>
#include <vector>

#include "cli/pot_options.hpp"
#include "climate/place_season.hpp"
#include "input/input_files.hpp"
#include "input/located_request.hpp"
#include "input/resolve.hpp"

namespace bulbwright::cli {

/// Many pot files as the words of a command line name them.

/// The files meant: a folder stands for the pot files in it (names that end in .json) by name,
/// those of folders in it left alone. @throws InputError for a folder that cannot be read or has
/// none.
std::vector<std::string> pot_files(const std::vector<std::string>& words);

/// @throws InvalidValue of `command` where no file is given, or standard input twice.
void check_pot_files(const char* command, const std::vector<std::string>& files,
                     const char* expected);

/// One of them, read and resolved; or why it cannot be.
struct PotFile {
  std::string file;
  std::string group;
  input::LocatedRequest asked;
  std::shared_ptr<const PlaceSeason> place_season;  ///< shared by pots of one place and season
  std::vector<InputFault> faults;                   ///< of this file; then nothing else is known

  [[nodiscard]] bool ok() const { return faults.empty(); }
};

/// Reads them all. A file with faults of its own is returned with them.
/// @throws InputError for faults of the flags, for files that cannot be opened, and where no file
/// is without fault.
std::vector<PotFile> read_pot_files(const std::vector<std::string>& files,
                                    const PotOptions& options, const input::Facts& facts,
                                    input::InputFiles& inputs);

/// What is told of a file that was read, a line each.
std::string remarks_on(const PotFile& pot);

/// For commands that do nothing for the others: @throws InputError with the faults of all files.
void throw_if_any_fault(const std::vector<PotFile>& pots);

}  // namespace bulbwright::cli
