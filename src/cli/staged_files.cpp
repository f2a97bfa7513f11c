#include "cli/staged_files.hpp"

#include <cerrno>
#include <cstdio>
#include <cstdlib>
#include <filesystem>

#include <fmt/core.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/error.hpp"

namespace bulbwright::cli {
namespace {

namespace fs = std::filesystem;

constexpr mode_t all_permissions = 0777;

/// Permissions that an ordinary new file gets.
mode_t ordinary_mode() {
  const mode_t mask = ::umask(0);
  ::umask(mask);
  return static_cast<mode_t>(0666) & ~mask;
}

/// Gives a new file the owner and the mode of the one that it replaces. Where the group cannot be
/// kept, the new one gets no more than everybody.
void take_after(int descriptor, const struct stat& former, const std::string& name) {
  mode_t mode = former.st_mode & all_permissions;
  struct stat own {};
  if (::fstat(descriptor, &own) != 0) cannot_write(name);
  if (own.st_uid != former.st_uid || own.st_gid != former.st_gid) {
    if (::fchown(descriptor, former.st_uid, former.st_gid) != 0 &&
        ::fchown(descriptor, own.st_uid, former.st_gid) != 0) {
      mode &= ~static_cast<mode_t>(S_IRWXG) | ((mode & S_IRWXO) << 3U);
    }
  }
  if (::fchmod(descriptor, mode) != 0) cannot_write(name);
}

}  // namespace

void write_all(int descriptor, std::string_view text, const std::string& name) {
  while (!text.empty()) {
    const ssize_t n = ::write(descriptor, text.data(), text.size());
    if (n >= 0) {
      text.remove_prefix(static_cast<std::size_t>(n));
    } else if (errno != EINTR) {
      cannot_write(name);
    }
  }
}

/// One temporary file, gone at the end unless it was put in its place.
class StagedFiles::Staged {
 public:
  explicit Staged(const OutputTarget& target)
      : name_{target.name},
        path_{target.path},
        former_{target.there},
        may_replace_{target.output->may_replace} {
    // A name of its own: the target's with something behind it could be too long.
    std::string pattern = (fs::path{path_}.parent_path() / ".bulbwright-XXXXXX").string();
    const SignalsHeld held;
    descriptor_ = ::mkstemp(pattern.data());
    if (descriptor_ < 0) cannot_write(name_);
    temporary_ = std::make_unique<RemovedOnSignal>(std::move(pattern));
  }
  Staged(const Staged&) = delete;
  Staged& operator=(const Staged&) = delete;
  ~Staged() {
    if (descriptor_ >= 0) ::close(descriptor_);
    if (!placed_) ::unlink(temporary_->path().c_str());
  }

  void write(std::string_view text) {
    write_all(descriptor_, text, name_);
    if (former_) {
      take_after(descriptor_, *former_, name_);
    } else if (::fchmod(descriptor_, ordinary_mode()) != 0) {
      cannot_write(name_);
    }
    if (::fsync(descriptor_) != 0) cannot_write(name_);
    const int descriptor = descriptor_;
    descriptor_ = -1;
    if (::close(descriptor) != 0) cannot_write(name_);
  }

  /// Takes the place; with `undoable` the former file is kept beside it.
  void place(bool undoable) {
    const char* from = temporary_->path().c_str();
    if (former_ && undoable) {
      kept_ = temporary_->path() + "~";
      // A second name; where the file system has none, the first for a moment.
      if (::link(path_.c_str(), kept_.c_str()) != 0 &&
          std::rename(path_.c_str(), kept_.c_str()) != 0) {
        kept_.clear();
        cannot_write(name_);
      }
    }
    if (!former_ && !may_replace_) {
      // link() replaces nothing: a file that another program put there since the check is kept.
      if (::link(from, path_.c_str()) == 0) {
        ::unlink(from);
        placed_ = true;
        return;
      }
      if (errno == EEXIST) cannot_write(name_);
    }
    if (std::rename(from, path_.c_str()) != 0) {
      const int reason = errno;
      put_back();
      errno = reason;
      cannot_write(name_);
    }
    placed_ = true;
  }

  /// Undoes place(). False where the former file could not be put back.
  bool take_back() {
    if (!placed_) return true;
    if (!former_) return ::unlink(path_.c_str()) == 0;
    return put_back();
  }

  void forget_former() {
    if (!kept_.empty()) ::unlink(kept_.c_str());
    kept_.clear();
  }

  [[nodiscard]] const std::string& name() const { return name_; }

 private:
  bool put_back() {
    if (kept_.empty()) return true;
    if (std::rename(kept_.c_str(), path_.c_str()) != 0) return false;
    // Two names of one file: rename() leaves both.
    ::unlink(kept_.c_str());
    kept_.clear();
    return true;
  }

  std::string name_, path_;
  std::optional<struct stat> former_;
  bool may_replace_;
  std::unique_ptr<RemovedOnSignal> temporary_;
  int descriptor_ = -1;
  bool placed_ = false;
  std::string kept_;  ///< where the former file is kept
};

StagedFiles::StagedFiles() = default;

StagedFiles::~StagedFiles() {
  files_.clear();
  for (auto folder = made_folders_.rbegin(); folder != made_folders_.rend(); ++folder) {
    ::rmdir((*folder)->path().c_str());  // those with files in them stay
  }
}

void StagedFiles::make_folder(const std::string& folder, const std::string& name) {
  struct stat facts {};
  if (::stat(folder.c_str(), &facts) == 0 || errno != ENOENT) return;  // a fault shows later
  const fs::path parent = fs::path{folder}.parent_path();
  if (!parent.empty() && parent != folder) make_folder(parent.string(), name);
  const SignalsHeld held;
  if (::mkdir(folder.c_str(), all_permissions) == 0) {
    made_folders_.push_back(std::make_unique<RemovedOnSignal>(folder));
  } else if (errno != EEXIST) {
    cannot_write(name);
  }
}

void StagedFiles::add(const OutputTarget& target) {
  make_folder(fs::path{target.path}.parent_path().string(), target.name);
  files_.push_back(std::make_unique<Staged>(target));
  files_.back()->write(target.output->text);
}

void StagedFiles::commit() {
  const SignalsHeld held;
  std::size_t placed = 0;
  try {
    for (; placed < files_.size(); ++placed) files_[placed]->place(placed + 1 < files_.size());
  } catch (const OutputError& error) {
    std::string text = error.what();
    while (placed-- > 0) {
      if (!files_[placed]->take_back())
        text += fmt::format("; {} could not be put back", files_[placed]->name());
    }
    throw OutputError{text};
  }
  for (const auto& file : files_) file->forget_former();
}

}  // namespace bulbwright::cli
