#include "cli/write_result.hpp"

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include "bulbwright/error.hpp"

namespace bulbwright::cli {
namespace {

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
    if (descriptor_ < 0) fail(bulbwright::quoted(beside));
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
    if (std::rename(path_.c_str(), path.c_str()) != 0) fail(bulbwright::quoted(path));
    kept_ = true;
  }

 private:
  std::string path_;
  int descriptor_ = -1;
  bool kept_ = false;
};

}  // namespace

void write_standard_output(const std::string& text) {
  if (text.empty()) return;
  if (std::fwrite(text.data(), 1, text.size(), stdout) != text.size() || std::fflush(stdout) != 0 ||
      std::ferror(stdout) != 0) {
    fail("standard output");
  }
}

void write_file(const std::string& path, const std::string& text,
                const std::vector<std::string>& inputs) {
  std::error_code ignored;
  for (const std::string& input : inputs) {
    if (std::filesystem::equivalent(path, input, ignored)) {
      throw OutputError{
          fmt::format("--out {} is an input; it is left as it was", bulbwright::quoted(path))};
    }
  }
  struct stat info {};
  const bool exists = ::stat(path.c_str(), &info) == 0;
  if (exists && S_ISDIR(info.st_mode)) {
    errno = EISDIR;
    fail(bulbwright::quoted(path));
  }
  if (exists && !S_ISREG(info.st_mode)) {
    const int descriptor = ::open(path.c_str(), O_WRONLY | O_CLOEXEC);
    if (descriptor < 0) fail(bulbwright::quoted(path));
    try {
      write_all(descriptor, text, bulbwright::quoted(path));
    } catch (...) {
      ::close(descriptor);
      throw;
    }
    if (::close(descriptor) != 0) fail(bulbwright::quoted(path));
    return;
  }
  // A link is kept: the file that it names is replaced.
  const std::string target = exists ? std::filesystem::canonical(path, ignored).string() : path;
  TemporaryFile temporary{target};
  temporary.write(text, bulbwright::quoted(path));
  temporary.keep_as(target);
}

}  // namespace bulbwright::cli
