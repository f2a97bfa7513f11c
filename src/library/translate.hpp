#pragma once

#include "base/error.hpp"
#include "bulbwright/bad_input.hpp"
#include "bulbwright/effort.hpp"
#include "packing/choices.hpp"

namespace bulbwright::library {

/// Between the words of the installed headers and those of the rooms.

/// The faults of a reader as the caller of the library gets them.
BadInput bad_input(const InputError& error);
BadInput bad_value(const InvalidValue& error);

/// Calls `work`; what it says of wrong input leaves as BadInput.
template <class Work>
auto translated(const Work& work) {
  try {
    return work();
  } catch (const InputError& error) {
    throw bad_input(error);
  } catch (const InvalidValue& error) {
    throw bad_value(error);
  }
}

constexpr bulbwright::Effort effort_of(Effort effort) {
  switch (effort) {
    case Effort::quick:
      return bulbwright::Effort::quick;
    case Effort::normal:
      return bulbwright::Effort::normal;
    case Effort::thorough:
      break;
  }
  return bulbwright::Effort::thorough;
}

}  // namespace bulbwright::library
