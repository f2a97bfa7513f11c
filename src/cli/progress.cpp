#include "cli/progress.hpp"

#include <algorithm>

#include <fmt/core.h>

namespace bulbwright::cli {

void Progress::begin(const char* what, int all) {
  what_ = nullptr;
  done_ = 0;
  all_ = all;
  what_ = what;
}

std::string Progress::text(int seconds) const {
  std::string text = fmt::format("bulbwright: {} s", seconds);
  if (const char* what = what_) {
    const int all = all_;
    text += fmt::format(", {} {} of {}", what, std::min(done_ + 1, all), all);
  }
  return text;
}

}  // namespace bulbwright::cli
