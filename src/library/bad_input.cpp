#include "bulbwright/bad_input.hpp"

#include <utility>

#include "library/translate.hpp"

namespace bulbwright::library {

BadInput::BadInput(std::vector<Fault> faults, const std::string& text)
    : std::runtime_error{text}, faults_{std::move(faults)} {}

BadInput bad_input(const InputError& error) {
  std::vector<Fault> faults;
  for (const InputFault& fault : error.faults())
    faults.push_back({fault.place.file, fault.place.line, fault.place.column, fault.message});
  return {std::move(faults), describe(error)};
}

BadInput bad_value(const InvalidValue& error) {
  return {{{"", 0, 0, error.what()}}, error.what()};
}

}  // namespace bulbwright::library
