#include "input/file_reader.hpp"

#include <array>
#include <cerrno>
#include <limits>
#include <string_view>
#include <system_error>

#include <fcntl.h>
#include <fmt/core.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/error.hpp"

namespace bulbwright::input {
namespace {

class OpenFile {
 public:
  explicit OpenFile(int number, bool owned) : number_{number}, owned_{owned} {}
  OpenFile(const OpenFile&) = delete;
  OpenFile& operator=(const OpenFile&) = delete;
  ~OpenFile() {
    if (owned_ && number_ >= 0) ::close(number_);
  }
  [[nodiscard]] int number() const { return number_; }

 private:
  int number_;
  bool owned_;
};

[[noreturn]] void cannot_read(const std::string& name, const std::string& why) {
  throw UnreadableFile{name, why};
}

std::string system_reason(int number) {
  return std::generic_category().message(number);
}

/// Names of descriptors that the shell has opened for us: opening them again cannot block.
bool is_open_already(std::string_view path) {
  return path == "/dev/stdin" || path.starts_with("/dev/fd/") || path.starts_with("/proc/self/fd/");
}

std::string too_large(std::size_t limit) {
  return fmt::format("it has more than {} bytes, the most that is read", limit);
}

void require_readable_kind(const std::string& path, std::size_t limit) {
  struct stat facts {};
  if (::stat(path.c_str(), &facts) != 0) cannot_read(path, system_reason(errno));
  if (S_ISDIR(facts.st_mode)) cannot_read(path, "it is a directory");
  if (S_ISREG(facts.st_mode)) {
    if (static_cast<std::size_t>(facts.st_size) > limit) cannot_read(path, too_large(limit));
    return;
  }
  if (!is_open_already(path)) {
    cannot_read(path, "it is no regular file (to read from a pipe give - and pipe into it)");
  }
}

using Block = std::array<char, 65536>;

/// The next bytes, at most `most`; none at the end.
std::string_view next_block(const OpenFile& file, const std::string& name, Block& block,
                            std::size_t most = std::numeric_limits<std::size_t>::max()) {
  for (;;) {
    const ssize_t got = ::read(file.number(), block.data(), std::min(block.size(), most));
    if (got >= 0) return {block.data(), static_cast<std::size_t>(got)};
    if (errno == EINTR) continue;
    if (errno == EISDIR) cannot_read(name, "it is a directory");
    cannot_read(name, system_reason(errno));
  }
}

std::string read_bounded(const OpenFile& file, const std::string& name, std::size_t limit) {
  std::string text;
  Block block{};
  for (;;) {
    const std::string_view got = next_block(file, name, block, limit + 1 - text.size());
    if (got.empty()) return text;
    text.append(got);
    if (text.size() > limit) cannot_read(name, too_large(limit));
  }
}

/// Opens a path that is not "-". `limit` bounds a regular file's size.
int open_for_reading(const std::string& path, std::size_t limit) {
  if (path.empty()) throw InputError{SourcePlace{}, "the name of the file is empty"};
  require_readable_kind(path, limit);
  // O_NONBLOCK: a named pipe put there since the check must not be waited for.
  const int flags = O_RDONLY | O_CLOEXEC | (is_open_already(path) ? 0 : O_NONBLOCK);
  const int number = ::open(path.c_str(), flags);
  if (number < 0) cannot_read(path, system_reason(errno));
  return number;
}

}  // namespace

UnreadableFile::UnreadableFile(const std::string& name, const std::string& why)
    : InputError{SourcePlace{}, fmt::format("cannot read {}: {}", path_in_quotes(name), why)} {}

InputText read_text(const std::string& path, std::size_t limit, InputFiles& inputs) {
  if (path == "-") {
    const OpenFile standard_input{STDIN_FILENO, false};
    inputs.note(standard_input.number());
    return {"<stdin>", read_bounded(standard_input, "<stdin>", limit)};
  }
  const OpenFile file{open_for_reading(path, limit), true};
  inputs.note(file.number());
  return {path, read_bounded(file, path, limit)};
}

void read_blocks(const std::string& path, InputFiles& inputs,
                 const std::function<bool(std::string_view)>& take) {
  const bool standard = path == "-";
  const OpenFile file{
      standard ? STDIN_FILENO : open_for_reading(path, std::numeric_limits<std::size_t>::max()),
      !standard};
  inputs.note(file.number());
  Block block{};
  for (;;) {
    const std::string_view got = next_block(file, standard ? "<stdin>" : path, block);
    if (got.empty() || !take(got)) return;
  }
}

}  // namespace bulbwright::input
