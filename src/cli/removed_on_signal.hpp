#pragma once

#include <csignal>
#include <string>

namespace bulbwright::cli {

/// Holds back the signals that end a program, so that what happens meanwhile happens whole.
class SignalsHeld {
 public:
  SignalsHeld();
  SignalsHeld(const SignalsHeld&) = delete;
  SignalsHeld& operator=(const SignalsHeld&) = delete;
  ~SignalsHeld();

 private:
  sigset_t before_;
};

/// A file or an empty folder that is removed should SIGINT, SIGTERM, SIGHUP or SIGPIPE end the
/// program during this object's life; the program still ends by that signal. Make it while
/// SignalsHeld, before or together with what it names. A signal that was ignored stays ignored.
class RemovedOnSignal {
 public:
  explicit RemovedOnSignal(std::string path);
  RemovedOnSignal(const RemovedOnSignal&) = delete;
  RemovedOnSignal& operator=(const RemovedOnSignal&) = delete;
  ~RemovedOnSignal();

  [[nodiscard]] const std::string& path() const { return path_; }

 private:
  friend void remove_all_and_end(int signal);
  std::string path_;
  RemovedOnSignal* older_ = nullptr;
  RemovedOnSignal* newer_ = nullptr;
};

}  // namespace bulbwright::cli
