#pragma once

#include <string>
#include <vector>

#include "cli/command.hpp"

namespace bulbwright::cli {

/// Writes `text` to standard output and flushes it. @throws OutputError when that fails.
void write_standard_output(const std::string& text);

/// Writes all files or none: temporary files beside them, flushed to the disk, and renamed once all
/// of them are there. A device or a pipe is written to directly,
/// last.
/// @throws OutputError with the system's reason, or when a file is one of `inputs`, stands in
/// `files` twice, or is there already with another text and may not be replaced.
void write_files(const std::vector<OutputFile>& files, const std::vector<std::string>& inputs);

}  // namespace bulbwright::cli
