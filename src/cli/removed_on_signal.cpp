#include "cli/removed_on_signal.hpp"

#include <array>
#include <utility>

#include <unistd.h>

namespace bulbwright::cli {
namespace {

constexpr std::array ending{SIGINT, SIGTERM, SIGHUP, SIGPIPE};

sigset_t ending_signals() {
  sigset_t set;
  sigemptyset(&set);
  for (const int signal : ending) sigaddset(&set, signal);
  return set;
}

/// The newest of a list that the handler walks; changed only while the signals are held.
RemovedOnSignal* newest = nullptr;

}  // namespace

/// The handler: calls nothing that a signal handler may not call.
void remove_all_and_end(int signal) {
  for (const RemovedOnSignal* item = newest; item != nullptr; item = item->older_) {
    if (::unlink(item->path_.c_str()) != 0) ::rmdir(item->path_.c_str());
  }
  std::signal(signal, SIG_DFL);
  ::raise(signal);  // delivered on return
}

namespace {

void install_handlers() {
  for (const int signal : ending) {
    struct sigaction action {};
    if (::sigaction(signal, nullptr, &action) != 0 || action.sa_handler != SIG_DFL) continue;
    action.sa_handler = remove_all_and_end;
    action.sa_mask = ending_signals();
    ::sigaction(signal, &action, nullptr);
  }
}

}  // namespace

SignalsHeld::SignalsHeld() {
  const sigset_t set = ending_signals();
  ::sigprocmask(SIG_BLOCK, &set, &before_);
}

SignalsHeld::~SignalsHeld() {
  ::sigprocmask(SIG_SETMASK, &before_, nullptr);
}

RemovedOnSignal::RemovedOnSignal(std::string path) : path_{std::move(path)}, older_{newest} {
  install_handlers();
  if (older_ != nullptr) older_->newer_ = this;
  newest = this;
}

RemovedOnSignal::~RemovedOnSignal() {
  const SignalsHeld held;
  if (older_ != nullptr) older_->newer_ = newer_;
  (newer_ != nullptr ? newer_->older_ : newest) = older_;
}

}  // namespace bulbwright::cli
