#pragma once

#include <stdexcept>
#include <string>
#include <vector>

namespace bulbwright::library {

/// One thing that is wrong in an input. Lines and columns count from 1, columns in code points;
/// line 0 means the input as a whole.
struct Fault {
  std::string file;
  int line = 0;
  int column = 0;
  std::string message;
};

/// The input cannot be used: everything that was found wrong with it, in the order of its places.
/// what() is all of it as text, a line each.
class BadInput : public std::runtime_error {
 public:
  BadInput(std::vector<Fault> faults, const std::string& text);
  [[nodiscard]] const std::vector<Fault>& faults() const { return faults_; }

 private:
  std::vector<Fault> faults_;
};

}  // namespace bulbwright::library
