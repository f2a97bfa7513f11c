#include "cli/progress_line.hpp"

#include <chrono>
#include <cstdio>
#include <string>

namespace bulbwright::cli {
namespace {

constexpr int first_second = 1;

void put(const std::string& text) {
  std::fwrite(text.data(), 1, text.size(), stderr);
  std::fflush(stderr);
}

}  // namespace

ProgressLine::ProgressLine(const Progress& progress)
    : progress_{progress}, thread_{[this] { show(); }} {}

ProgressLine::~ProgressLine() {
  {
    const std::lock_guard lock{mutex_};
    done_ = true;
  }
  wake_.notify_one();
  thread_.join();
}

void ProgressLine::show() {
  std::unique_lock lock{mutex_};
  bool shown = false;
  for (int second = 1; !wake_.wait_for(lock, std::chrono::seconds{1}, [this] { return done_; });
       ++second) {
    if (second < first_second) continue;
    put("\r" + progress_.text(second) + "\x1b[K");
    shown = true;
  }
  if (shown) put("\r\x1b[K");
}

}  // namespace bulbwright::cli
