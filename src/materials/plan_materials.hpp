#pragma once

#include <vector>

#include "base/quantity.hpp"
#include "materials/materials.hpp"

namespace bulbwright {

/// What a plan tells of mix, mesh and weight.
struct PlanMaterials {
  Litres mix_settled;               ///< in the pot, bulbs taken off
  Litres mix_loose;                 ///< to buy, before settling, perlite included
  Litres perlite;                   ///< of mix_loose
  std::vector<Litres> mix_by_step;  ///< settled, under layer 1, between the layers, and on top
  Millimetres mesh_disc;            ///< along x; 0: none
  Millimetres mesh_width;           ///< along y; as mesh_disc for a round pot
  Millimetres mesh_opening;         ///< at most; 0: none
  int pins = 0;
  /// Of the piece on the floor, over the holes; 0: none.
  Millimetres mesh_beneath, mesh_beneath_width, mesh_beneath_opening;
  int labels = 0;
  Kilograms filled_weight;  ///< watered and drained
  /// The same for the lightest and heaviest mixes measured and a shell a quarter off.
  Kilograms filled_weight_low, filled_weight_high;
  Kilograms shell_weight;
  LiftVerdict lifting = LiftVerdict::not_lifted;  ///< by guideline
  Kilograms lift_one, lift_two;                   ///< the guideline used
};

PlanMaterials plan_materials(const Materials& materials);

}  // namespace bulbwright
