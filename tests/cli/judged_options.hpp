#pragma once

#include <optional>
#include <utility>

#include "cli/pot_options.hpp"

namespace bulbwright::cli {

/// merged(). @throws InputError with every fault.
inline input::LocatedRequest merged(std::optional<input::LocatedRequest> file,
                                    const PotOptions& options, Need need = Need::all) {
  input::Faults faults;
  input::LocatedRequest asked = merged(std::move(file), options, need, faults);
  faults.throw_if_any();
  return asked;
}

}  // namespace bulbwright::cli
