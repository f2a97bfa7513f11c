#pragma once

#include <condition_variable>
#include <mutex>
#include <thread>

#include "cli/progress.hpp"

namespace bulbwright::cli {

/// After a second a line on standard error that tells how far the work is, renewed each second
/// and gone when this object is. For a terminal only: main() looks.
class ProgressLine {
 public:
  /// `progress` must outlive it.
  explicit ProgressLine(const Progress& progress);
  ~ProgressLine();
  ProgressLine(const ProgressLine&) = delete;
  ProgressLine& operator=(const ProgressLine&) = delete;

 private:
  void show();

  const Progress& progress_;
  std::mutex mutex_;
  std::condition_variable wake_;
  bool done_ = false;
  std::thread thread_;
};

}  // namespace bulbwright::cli
