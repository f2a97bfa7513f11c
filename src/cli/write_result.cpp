#include "cli/write_result.hpp"

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <memory>

#include <fcntl.h>
#include <fmt/core.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/error.hpp"

namespace bulbwright::cli {
namespace {

namespace fs = std::filesystem;

[[noreturn]] void fail(const std::string& what) {
  throw OutputError{fmt::format("cannot write {}: {}", what, std::strerror(errno))};
}

void write_all(int descriptor, const std::string& text, const std::string& name) {
  std::size_t done = 0;
  while (done < text.size()) {
    const ssize_t n = ::write(descriptor, text.data() + done, text.size() - done);
    if (n < 0) {
      if (errno == EINTR) continue;
      fail(name);
    }
    done += static_cast<std::size_t>(n);
  }
}

/// Permissions that an ordinary new file would get.
mode_t ordinary_mode() {
  const mode_t mask = ::umask(0);
  ::umask(mask);
  return static_cast<mode_t>(0666) & ~mask;
}

/// A temporary file that is gone unless it was kept.
class TemporaryFile {
 public:
  explicit TemporaryFile(const std::string& beside) : path_{beside + ".XXXXXX"} {
    descriptor_ = ::mkstemp(path_.data());
    if (descriptor_ < 0) fail(bulbwright::in_quotes(beside));
  }
  TemporaryFile(const TemporaryFile&) = delete;
  TemporaryFile& operator=(const TemporaryFile&) = delete;
  ~TemporaryFile() {
    if (descriptor_ >= 0) ::close(descriptor_);
    if (!kept_) ::unlink(path_.c_str());
  }
  void write(const std::string& text, const std::string& name) {
    write_all(descriptor_, text, name);
    if (::fchmod(descriptor_, ordinary_mode()) != 0 || ::fsync(descriptor_) != 0) fail(name);
    const int descriptor = descriptor_;
    descriptor_ = -1;
    if (::close(descriptor) != 0) fail(name);
  }
  void keep_as(const std::string& path) {
    if (std::rename(path_.c_str(), path.c_str()) != 0) fail(bulbwright::in_quotes(path));
    kept_ = true;
  }

 private:
  std::string path_;
  int descriptor_ = -1;
  bool kept_ = false;
};

/// Refuses what must not be lost before anything is written.
void check_target(const OutputFile& file, const std::vector<OutputFile>& files,
                  const std::vector<std::string>& inputs) {
  std::error_code ignored;
  const std::string name = bulbwright::in_quotes(file.path);
  for (const std::string& input : inputs) {
    if (fs::equivalent(file.path, input, ignored))
      throw OutputError{fmt::format("{} is an input; it is left as it was", name)};
  }
  for (const OutputFile& other : files) {
    if (&other != &file &&
        (other.path == file.path || fs::equivalent(other.path, file.path, ignored)))
      throw OutputError{fmt::format("{} would be written twice", name)};
  }
  const fs::file_status status = fs::status(file.path, ignored);
  if (fs::is_directory(status)) {
    errno = EISDIR;
    fail(name);
  }
  if (!fs::is_regular_file(status) || file.may_replace) return;
  std::ifstream stream{file.path, std::ios::binary};
  const std::string there{std::istreambuf_iterator<char>{stream}, {}};
  if (there != file.text) {
    throw OutputError{fmt::format(
        "{} is there already and differs; it is left as it was (--force replaces it)", name)};
  }
}

/// To a device or a pipe.
void write_directly(const OutputFile& file) {
  const std::string name = bulbwright::in_quotes(file.path);
  const int descriptor = ::open(file.path.c_str(), O_WRONLY | O_CLOEXEC);
  if (descriptor < 0) fail(name);
  try {
    write_all(descriptor, file.text, name);
  } catch (...) {
    ::close(descriptor);
    throw;
  }
  if (::close(descriptor) != 0) fail(name);
}

}  // namespace

void write_standard_output(const std::string& text) {
  if (text.empty()) return;
  if (std::fwrite(text.data(), 1, text.size(), stdout) != text.size() || std::fflush(stdout) != 0 ||
      std::ferror(stdout) != 0) {
    fail("standard output");
  }
}

void write_files(const std::vector<OutputFile>& files, const std::vector<std::string>& inputs) {
  for (const OutputFile& file : files) check_target(file, files, inputs);
  std::vector<std::unique_ptr<TemporaryFile>> staged;
  std::vector<std::string> targets;
  std::vector<const OutputFile*> direct;
  for (const OutputFile& file : files) {
    std::error_code fault;
    const fs::file_status status = fs::status(file.path, fault);
    if (fs::exists(status) && !fs::is_regular_file(status)) {
      direct.push_back(&file);
      continue;
    }
    if (file.make_folder) {  // a fault shows at the file itself
      fs::create_directories(fs::path{file.path}.parent_path(), fault);
    }
    // A link is kept: the file that it names is replaced.
    targets.push_back(fs::exists(status) ? fs::canonical(file.path, fault).string() : file.path);
    staged.push_back(std::make_unique<TemporaryFile>(targets.back()));
    staged.back()->write(file.text, bulbwright::in_quotes(file.path));
  }
  for (std::size_t i = 0; i < staged.size(); ++i) staged[i]->keep_as(targets[i]);
  for (const OutputFile* file : direct) write_directly(*file);
}

}  // namespace bulbwright::cli
