#pragma once

#include <atomic>
#include <string>

namespace bulbwright::cli {

/// How far a command is: it tells here, the line on the terminal (progress_line.hpp) reads it from
/// another thread.
class Progress {
 public:
  /// From now on one of `all` is worked on; `what` is a literal such as "pot".
  void begin(const char* what, int all);
  void next() { ++done_; }

  /// "bulbwright: 3 s" or "bulbwright: 3 s, pot 12 of 40".
  [[nodiscard]] std::string text(int seconds) const;

 private:
  std::atomic<const char*> what_ = nullptr;
  std::atomic<int> done_ = 0, all_ = 0;
};

}  // namespace bulbwright::cli
