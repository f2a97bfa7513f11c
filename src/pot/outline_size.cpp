#include "pot/outline_size.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/core.h>

#include "base/error.hpp"
#include "pot/pot.hpp"

namespace bulbwright {

std::string in_mm(Millimetres size) {
  return fmt::format("{:.10g} mm", rounded(size.value(), 0.1));
}

void check_size(Millimetres size, const std::string& field) {
  if (!std::isfinite(size.value()) || size <= Millimetres{0.0})
    throw InvalidValue{field, "expected a length above 0 mm"};
  if (size > largest_pot_size) {
    throw InvalidValue{field, fmt::format("{} is more than {}; check the unit", in_mm(size),
                                          in_mm(largest_pot_size))};
  }
}

OutlineSize outline_size(Shape shape, const LengthPair& given, const std::string& field) {
  check_size(given.first, field);
  if (given.paired) check_size(given.second, field);
  if (shape == Shape::round) {
    if (given.paired && given.first != given.second) {
      throw InvalidValue{field,
                         "expected one width for a round outline; two lengths need the shape oval, "
                         "rectangle or half-round"};
    }
    return {given.first, given.first};
  }
  if (given.paired) return {given.first, given.second};
  return {given.first, shape == Shape::half_round ? given.first / 2.0 : given.first};
}

void check_corner(Shape shape, OutlineSize size, Millimetres corner, const std::string& field) {
  if (!std::isfinite(corner.value()) || corner < Millimetres{0.0})
    throw InvalidValue{field, "expected a length of 0 mm or more"};
  if (corner > Millimetres{0.0} && shape != Shape::rectangle)
    throw InvalidValue{field, "only a rectangle has a corner radius"};
  const Millimetres most = std::min(size.length, size.width) / 2.0;
  if (corner <= most || shape != Shape::rectangle) return;
  throw InvalidValue{
      field, fmt::format("{} is more than half the shorter side, {}", in_mm(corner), in_mm(most))};
}

}  // namespace bulbwright
