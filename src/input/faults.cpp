#include "input/faults.hpp"

#include <algorithm>
#include <map>
#include <tuple>

namespace bulbwright::input {
namespace {

/// Files in the order in which their first faults came; faults without a line last of all.
std::vector<InputFault> in_order(std::vector<InputFault> faults) {
  std::map<std::string, std::size_t> files;
  for (const InputFault& fault : faults) files.try_emplace(fault.place.file, files.size());
  const auto key = [&](const InputFault& fault) {
    return std::tuple{fault.place.line == 0, files.at(fault.place.file), fault.place.line,
                      fault.place.column};
  };
  std::stable_sort(faults.begin(), faults.end(),
                   [&](const InputFault& a, const InputFault& b) { return key(a) < key(b); });
  return faults;
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
  throw InputError{in_order(std::move(faults_))};
}

}  // namespace bulbwright::input
