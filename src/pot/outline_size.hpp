#pragma once

#include <string>

#include "base/quantity.hpp"
#include "pot/section.hpp"

namespace bulbwright {

/// The one judge of the outlines that people give: for a pot's rim and base, and for `fit`.
/// `field` is what the messages of InvalidValue name.

struct OutlineSize {
  Millimetres length;
  Millimetres width;
};

/// "380 mm".
std::string in_mm(Millimetres size);

/// @throws InvalidValue unless `size` is above 0 mm and at most largest_pot_size (pot.hpp).
void check_size(Millimetres size, const std::string& field);

/// The two sizes of an outline given by one width or two. A half-round of one width is half a disc;
/// an oval or a rectangle of one width is as long as wide.
/// @throws InvalidValue for a size as check_size(), and for two widths of a round outline.
OutlineSize outline_size(Shape shape, const LengthPair& given, const std::string& field);

/// @throws InvalidValue for a corner radius below 0 mm, of anything but a rectangle, or above half
/// the shorter side.
void check_corner(Shape shape, OutlineSize size, Millimetres corner, const std::string& field);

}  // namespace bulbwright
