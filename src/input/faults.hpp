#pragma once

#include <string>
#include <vector>

#include "base/error.hpp"

namespace bulbwright::input {

/// What a value is called in messages and where it was written: "layers[1].grade" at a line and
/// column of a file, or "--grade" without either.
struct Field {
  std::string name;
  SourcePlace place;
};

/// Gathers the faults of an input, so that all of them are told at once.
class Faults {
 public:
  /// "name: message" at the field's place.
  void add(const Field& field, const std::string& message);
  /// The message alone.
  void add(SourcePlace place, std::string message);
  void add(std::vector<InputFault> more);

  [[nodiscard]] std::size_t size() const { return faults_.size(); }
  /// @throws InputError with all faults, file by file in the order of their places, those without
  /// a line last; returns where there is none.
  void throw_if_any();

 private:
  std::vector<InputFault> faults_;
};

}  // namespace bulbwright::input
