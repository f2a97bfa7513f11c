#pragma once

#include <optional>
#include <string>
#include <vector>

#include <sys/stat.h>

#include "cli/command.hpp"

namespace bulbwright::cli {

/// Where an output goes once links are followed.
struct OutputTarget {
  enum class Kind {
    file,        ///< a regular file, or none yet: a whole new one takes its place
    device,      ///< opened by name and written to: a terminal, a named pipe, /dev/full
    descriptor,  ///< open already: /dev/stdout, /dev/fd/N
    unchanged,   ///< there already with this very text
  };
  Kind kind = Kind::file;
  std::string name;  ///< as given, in quotes
  /// Of a file: its folder without links, and its name; two spellings of one file are one path,
  /// also where nothing is there yet.
  std::string path;
  std::optional<struct stat> there;  ///< what is there already
  int descriptor = -1;               ///< with Kind::descriptor
  const OutputFile* output = nullptr;
};

/// The targets of all outputs, which must outlive them. Changes nothing.
/// @throws OutputError for one that is an input, stands there twice, is a folder, is
/// write-protected, or is there already with another text and may not be replaced.
std::vector<OutputTarget> output_targets(const std::vector<OutputFile>& files,
                                         const input::InputFiles& inputs);

/// Refuses a standard output that would write into a file that was read (`>> pot.json`).
/// @throws OutputError
void check_standard_output(const input::InputFiles& inputs);

/// Throws OutputError "cannot write `name`: ..." with the reason of errno.
[[noreturn]] void cannot_write(const std::string& name);

}  // namespace bulbwright::cli
