#include "pot/section.hpp"

#include <numbers>

namespace bulbwright {

double area_mm2(const Section& section) {
  const double a = section.length.value(), b = section.width.value();
  switch (section.shape) {
    case Shape::round:
    case Shape::oval:
      return std::numbers::pi * a * b / 4.0;
    case Shape::half_round:
      return std::numbers::pi * a * b / 4.0;  // half of an ellipse a by 2b
    case Shape::rectangle: {
      const double r = section.corner.value();
      return a * b - (4.0 - std::numbers::pi) * r * r;
    }
  }
  return 0.0;
}

}  // namespace bulbwright
