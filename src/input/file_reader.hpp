#pragma once

#include <cstddef>
#include <functional>
#include <string>
#include <string_view>

#include "base/error.hpp"
#include "input/input_files.hpp"

namespace bulbwright::input {

/// A pot file is a page of text; a megabyte is a hundred times the longest.
inline constexpr std::size_t pot_file_limit = 1'000'000;

/// A file that cannot be read, for the reader that knows where it was named.
class UnreadableFile : public InputError {
 public:
  UnreadableFile(const std::string& name, const std::string& why);
};

/// A whole input in memory and the name it bears in messages.
struct InputText {
  std::string name;  ///< the path as given, "<stdin>" for "-"
  std::string text;
};

/// Reads a whole file of at most `limit` bytes, or standard input where `path` is "-". Never reads
/// more than limit + 1 bytes. Besides regular files only pipes and terminals that are open already
/// are read (/dev/stdin, /dev/fd/N, as the shell's <(...) makes them): a named pipe or a device
/// could be waited for without end. What is opened is noted in `inputs`.
/// @throws InputError "cannot read ...: why" for a missing, unreadable, irregular or too large
/// file.
InputText read_text(const std::string& path, std::size_t limit, InputFiles& inputs);

/// Hands the same kinds of input on block by block, of any length, in constant memory. Stops early
/// where `take` returns false. @throws InputError as read_text, and what `take` throws.
void read_blocks(const std::string& path, InputFiles& inputs,
                 const std::function<bool(std::string_view)>& take);

}  // namespace bulbwright::input
