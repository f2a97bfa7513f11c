#pragma once

#include <string>
#include <vector>

namespace bulbwright::cli {

/// Writes `text` to standard output and flushes it. @throws OutputError when that fails.
void write_standard_output(const std::string& text);

/// Writes `text` to `path`, whole or not at all: a temporary file beside it, flushed to the disk,
/// then renamed over it. A device or a pipe is written to directly.
/// @throws OutputError with the system's reason, or when `path` is one of `inputs`.
void write_file(const std::string& path, const std::string& text,
                const std::vector<std::string>& inputs);

}  // namespace bulbwright::cli
