#include "input/faults.hpp"

#include <algorithm>
#include <limits>
#include <tuple>

namespace bulbwright::input {
namespace {

auto order(const InputFault& fault) {
  const int line = fault.place.line == 0 ? std::numeric_limits<int>::max() : fault.place.line;
  return std::tuple{line, fault.place.column};
}

}  // namespace

void Faults::add(const Field& field, const std::string& message) {
  add(field.place, field.name + ": " + message);
}

void Faults::add(SourcePlace place, std::string message) {
  faults_.push_back({std::move(place), std::move(message)});
}

void Faults::add(std::vector<InputFault> more) {
  for (InputFault& fault : more) faults_.push_back(std::move(fault));
}

void Faults::throw_if_any() {
  if (faults_.empty()) return;
  std::stable_sort(faults_.begin(), faults_.end(),
                   [](const InputFault& a, const InputFault& b) { return order(a) < order(b); });
  throw InputError{std::move(faults_)};
}

}  // namespace bulbwright::input
