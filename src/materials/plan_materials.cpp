#include "materials/plan_materials.hpp"

namespace bulbwright {

PlanMaterials plan_materials(const Materials& materials) {
  PlanMaterials planned;
  planned.mix_settled = materials.mix.settled;
  planned.mix_loose = materials.mix.loose;
  planned.perlite = materials.mix.perlite;
  planned.mix_by_step = materials.mix.by_step;
  if (materials.mesh) {
    planned.mesh_disc = materials.mesh->outline.length;
    planned.mesh_width = materials.mesh->outline.width;
    planned.mesh_opening = materials.mesh->opening;
    planned.pins = materials.mesh->pins;
  }
  if (materials.mesh_beneath) {
    planned.mesh_beneath = materials.mesh_beneath->outline.length;
    planned.mesh_beneath_width = materials.mesh_beneath->outline.width;
    planned.mesh_beneath_opening = materials.mesh_beneath->opening;
  }
  planned.labels = materials.labels;
  planned.filled_weight = materials.weight.total;
  planned.filled_weight_low = materials.weight.low;
  planned.filled_weight_high = materials.weight.high;
  planned.shell_weight = materials.weight.shell;
  planned.lifting = materials.lift.verdict;
  planned.lift_one = materials.lift.one;
  planned.lift_two = materials.lift.two;
  return planned;
}

}  // namespace bulbwright
