#include "materials/bulb_volume.hpp"

#include <numbers>

namespace bulbwright {
Litres sphere_volume(double circumference_cm) {
  const double c = circumference_cm;
  constexpr double millilitres_per_litre = 1000.0;
  return Litres{c * c * c / (6.0 * std::numbers::pi * std::numbers::pi) / millilitres_per_litre};
}

double shape_factor(std::optional<double> of_genus, double height_to_diameter) {
  return of_genus.value_or(0.82 * height_to_diameter);
}

Litres bulb_volume(double circumference_cm, double shape_factor) {
  return shape_factor * sphere_volume(circumference_cm);
}

Kilograms bulb_mass(Litres volume) {
  return Kilograms{volume.value() * bulb_density_kg_per_l};
}

}  // namespace bulbwright
