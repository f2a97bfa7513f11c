#include "cli/output_target.hpp"

#include <algorithm>
#include <array>
#include <cerrno>
#include <charconv>
#include <cstring>
#include <filesystem>
#include <fstream>

#include <fmt/core.h>
#include <unistd.h>

#include "base/error.hpp"

namespace bulbwright::cli {
namespace {

namespace fs = std::filesystem;

/// The number behind a name of an open descriptor.
std::optional<int> named_descriptor(std::string_view path) {
  if (path == "/dev/stdout") return STDOUT_FILENO;
  if (path == "/dev/stderr") return STDERR_FILENO;
  for (const std::string_view folder : {"/dev/fd/", "/proc/self/fd/"}) {
    if (!path.starts_with(folder)) continue;
    const std::string_view digits = path.substr(folder.size());
    int number = 0;
    const auto [end, fault] = std::from_chars(digits.data(), digits.data() + digits.size(), number);
    if (fault == std::errc{} && end == digits.data() + digits.size() && number >= 0) return number;
  }
  return std::nullopt;
}

/// The path with a link at its end followed, a dangling one too.
fs::path end_of_links(fs::path path, const std::string& name) {
  constexpr int most_links = 40;  // as the kernel
  for (int i = 0; i < most_links; ++i) {
    std::error_code fault;
    if (named_descriptor(path.native()) || !fs::is_symlink(fs::symlink_status(path, fault))) {
      return path;
    }
    const fs::path next = fs::read_symlink(path, fault);
    if (fault) return path;
    path = path.parent_path() / next;
  }
  errno = ELOOP;
  cannot_write(name);
}

/// The folder without links, as far as it is there, and the name in it.
std::string one_spelling(const fs::path& path) {
  std::error_code fault;
  const fs::path parent = path.parent_path();
  const fs::path folder = fs::weakly_canonical(parent.empty() ? "." : parent, fault);
  return fault ? path.string() : (folder / path.filename()).string();
}

std::optional<struct stat> facts_of(const std::string& path, const std::string& name) {
  struct stat facts {};
  if (::stat(path.c_str(), &facts) == 0) return facts;
  if (errno != ENOENT) cannot_write(name);
  return std::nullopt;
}

OutputTarget target_of(const OutputFile& file) {
  OutputTarget target;
  target.output = &file;
  target.name = path_in_quotes(file.path);
  const fs::path path = end_of_links(file.path, target.name);
  if (const auto number = named_descriptor(path.native())) {
    target.kind = OutputTarget::Kind::descriptor;
    target.descriptor = *number;
    target.path = path.string();
    struct stat facts {};
    if (::fstat(*number, &facts) != 0) cannot_write(target.name);
    target.there = facts;
    return target;
  }
  target.path = one_spelling(path);
  target.there = facts_of(path.string(), target.name);
  if (target.there && !S_ISREG(target.there->st_mode)) target.kind = OutputTarget::Kind::device;
  return target;
}

bool same_file(const OutputTarget& a, const OutputTarget& b) {
  if (a.path == b.path) return true;
  return a.there && b.there && a.there->st_dev == b.there->st_dev &&
         a.there->st_ino == b.there->st_ino;
}

/// Whether a file of this size holds `text`; a larger one is not read at all.
bool holds(const OutputTarget& target, std::string_view text) {
  if (static_cast<std::uintmax_t>(target.there->st_size) != text.size()) return false;
  std::ifstream stream{target.path, std::ios::binary};
  std::array<char, 65536> block{};
  while (!text.empty() && stream) {
    stream.read(block.data(), static_cast<std::streamsize>(std::min(block.size(), text.size())));
    const auto got = static_cast<std::size_t>(stream.gcount());
    if (text.substr(0, got) != std::string_view{block.data(), got}) return false;
    text.remove_prefix(got);
  }
  return text.empty();
}

bool was_read(const struct stat& facts, const input::InputFiles& inputs) {
  return S_ISREG(facts.st_mode) && inputs.contains(facts.st_dev, facts.st_ino);
}

[[noreturn]] void refuse(const std::string& name, const char* why) {
  throw OutputError{fmt::format("{} {}", name, why)};
}

/// Refuses what must not be lost.
void check(OutputTarget& target, const input::InputFiles& inputs) {
  if (!target.there) return;
  if (was_read(*target.there, inputs)) refuse(target.name, "is an input; it is left as it was");
  if (S_ISDIR(target.there->st_mode)) {
    errno = EISDIR;
    cannot_write(target.name);
  }
  if (target.kind != OutputTarget::Kind::file) return;
  if (!target.output->may_replace) {
    if (!holds(target, target.output->text)) {
      refuse(target.name,
             "is there already and differs; it is left as it was (--force replaces it)");
    }
    target.kind = OutputTarget::Kind::unchanged;
    return;
  }
  // The mode is asked too: access(2) allows everything to root.
  constexpr mode_t writable = S_IWUSR | S_IWGRP | S_IWOTH;
  if ((target.there->st_mode & writable) == 0 || ::access(target.path.c_str(), W_OK) != 0) {
    refuse(target.name, "is write-protected; it is left as it was");
  }
}

}  // namespace

void cannot_write(const std::string& name) {
  throw OutputError{fmt::format("cannot write {}: {}", name, std::strerror(errno))};
}

std::vector<OutputTarget> output_targets(const std::vector<OutputFile>& files,
                                         const input::InputFiles& inputs) {
  std::vector<OutputTarget> targets;
  for (const OutputFile& file : files) {
    OutputTarget target = target_of(file);
    check(target, inputs);
    for (const OutputTarget& other : targets) {
      if (same_file(target, other)) refuse(target.name, "would be written twice");
    }
    targets.push_back(std::move(target));
  }
  return targets;
}

void check_standard_output(const input::InputFiles& inputs) {
  struct stat facts {};
  if (::fstat(STDOUT_FILENO, &facts) == 0 && was_read(facts, inputs)) {
    refuse("standard output", "is an input; it is left as it was");
  }
}

}  // namespace bulbwright::cli
