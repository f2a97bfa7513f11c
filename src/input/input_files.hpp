#pragma once

#include <cstdint>
#include <set>
#include <utility>

namespace bulbwright::input {

/// The files that a run has read, known by device and number and not by their spelling. Every
/// reader of this room notes what it opens, so that no output can replace it.
class InputFiles {
 public:
  /// Notes the open file behind a descriptor. What is no regular file cannot be replaced by writing
  /// and is left out.
  void note(int descriptor);

  /// Whether the file with this device and number (as stat(2) tells them) was read.
  [[nodiscard]] bool contains(std::uint64_t device, std::uint64_t number) const {
    return files_.contains({device, number});
  }

 private:
  std::set<std::pair<std::uint64_t, std::uint64_t>> files_;
};

}  // namespace bulbwright::input
