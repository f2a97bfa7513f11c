#include "materials/bulb_volume.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <numbers>

namespace bulbwright {
namespace {

struct GenusShape {
  std::string_view genus;
  double factor;
};

constexpr std::array<GenusShape, 5> shapes{{{"tulipa", 0.85},
                                            {"narcissus", 1.05},
                                            {"hyacinthus", 1.0},
                                            {"crocus", 0.75},
                                            {"muscari", 0.95}}};

bool same_word(std::string_view a, std::string_view b) {
  const auto lower = [](char c) {
    return static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  };
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [&](char x, char y) { return lower(x) == lower(y); });
}

}  // namespace

Litres sphere_volume(double circumference_cm) {
  const double c = circumference_cm;
  constexpr double millilitres_per_litre = 1000.0;
  return Litres{c * c * c / (6.0 * std::numbers::pi * std::numbers::pi) / millilitres_per_litre};
}

double shape_factor(std::string_view genus, double height_to_diameter) {
  for (const GenusShape& shape : shapes) {
    if (same_word(shape.genus, genus)) return shape.factor;
  }
  return 0.82 * height_to_diameter;
}

Litres bulb_volume(double circumference_cm, double shape_factor) {
  return shape_factor * sphere_volume(circumference_cm);
}

Kilograms bulb_mass(Litres volume) {
  return Kilograms{volume.value() * bulb_density_kg_per_l};
}

}  // namespace bulbwright
