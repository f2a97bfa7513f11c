#pragma once

#include "cli/command.hpp"

namespace bulbwright::cli {

/// Writes the files and the document of a result, all or none: temporary files beside their targets
/// first, flushed to the disk; then what goes to devices, pipes and standard output, which cannot
/// be taken back; then the files are put in their places together.
/// A file that is replaced keeps its mode; a link is followed; a missing folder is made.
/// @throws OutputError with the system's reason; also when an output is one of `inputs`, stands
/// there twice, is write-protected, or is there already with another text and may not be replaced.
void write_result(const CommandResult& result, const input::InputFiles& inputs);

}  // namespace bulbwright::cli
