#pragma once

#include <string>
#include <string_view>

#include "input/pot_file_reader.hpp"
#include "input/request_check.hpp"

namespace bulbwright::input {

/// What a file must hold. whole: all that a plan needs. partial: flags would add the rest.
enum class Extent { whole, partial };

/// A pot file with contradictions() and, of a whole file, omissions().
/// @throws InputError with all faults.
inline LocatedRequest read_pot_file(std::string_view text, const std::string& file,
                                    Extent extent = Extent::whole) {
  Faults faults;
  LocatedRequest asked = read_pot_file(text, file, faults);
  faults.add(contradictions(asked));
  if (extent == Extent::whole) faults.add(omissions(asked));
  faults.throw_if_any();
  return asked;
}

}  // namespace bulbwright::input
