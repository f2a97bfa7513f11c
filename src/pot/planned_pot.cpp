#include "pot/planned_pot.hpp"

#include "pot/pot.hpp"

namespace bulbwright {

PlannedPot planned_pot(const Pot& pot) {
  PlannedPot planned;
  planned.name = pot.name;
  planned.shape = pot.shape;
  planned.height = inner_height(pot);
  planned.rim = section_at(pot, planned.height);
  planned.base = section_at(pot, Millimetres{0.0});
  planned.headspace = pot.headspace;
  planned.volume = full_volume(pot);
  planned.material = pot.material;
  for (const PotLevel& level : pot.levels)
    planned.profile.push_back({level.height, level.length, level.width});
  planned.corner = pot.levels.back().corner;
  return planned;
}

}  // namespace bulbwright
