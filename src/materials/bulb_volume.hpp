#pragma once

#include <optional>

#include "base/quantity.hpp"

namespace bulbwright {

/// Volume and mass of bulbs, from what the trade knows of them: circumference and shape.
/// Estimates, not measured on bulbs; good for litres of mix, not for a balance.

/// Mass of a bulb per litre of it. common practice
inline constexpr double bulb_density_kg_per_l = 1.05;

/// Volume of a sphere of circumference c: c^3 / (6 pi^2). circumference_cm > 0.
/// Source: geometry, V = 4/3 pi r^3 with r = c / (2 pi).
Litres sphere_volume(double circumference_cm);

/// Volume of a bulb over that of the sphere round its widest place: that of its genus
/// (data/genera.csv) where there is one, else 0.82 of its height over diameter, the mean of those
/// that have one (common practice).
double shape_factor(std::optional<double> of_genus, double height_to_diameter);

/// One bulb: sphere_volume x shape factor.
Litres bulb_volume(double circumference_cm, double shape_factor);

/// Mass of bulbs of that volume.
Kilograms bulb_mass(Litres volume);

}  // namespace bulbwright
