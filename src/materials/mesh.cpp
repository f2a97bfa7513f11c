#include "materials/mesh.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "pot/pot.hpp"

namespace bulbwright {
namespace {

/// In the order of the pests.
constexpr std::array<PestMesh, words_of<Pest>().size()> pest_table{{
    {Pest::gopher, MeshPlace::beneath, Millimetres{13.0}, std::nullopt, Origin::published,
     "University of California Master Gardeners (Colusa County): hardware cloth or 3/4 in mesh "
     "under "
     "beds; 1/2 in is sure"},
    {Pest::vole, MeshPlace::over, Millimetres{6.0}, std::nullopt, Origin::published,
     "Extension wildlife damage management; Kansas State University wildlife: 1/4 in"},
    {Pest::mouse, MeshPlace::over, Millimetres{6.0}, std::nullopt, Origin::published,
     "Rodent exclusion texts: gets through anything over 1/4 in"},
    {Pest::squirrel, MeshPlace::over, Millimetres{25.0}, Millimetres{13.0}, Origin::published,
     "W. Reeves, garden column: 1 in over the ground; 1/2 in for small bulbs: a how-to page"},
    {Pest::chipmunk, MeshPlace::over, Millimetres{25.0}, Millimetres{13.0}, Origin::common_practice,
     "as squirrel"},
    {Pest::deer, MeshPlace::over, std::nullopt, std::nullopt, Origin::common_practice,
     "mesh over the mix does nothing for shoots"},
}};
static_assert([] {
  for (std::size_t i = 0; i < pest_table.size(); ++i) {
    if (pest_table[i].pest != static_cast<Pest>(i)) return false;
  }
  return true;
}());

}  // namespace

const PestMesh& mesh_against(Pest pest) {
  return pest_table[static_cast<std::size_t>(pest)];
}

Section mesh_outline(const Section& section) {
  Section outline = section;
  const auto less = [](Millimetres size) {
    return std::max(Millimetres{0.0}, size - 2.0 * mesh_clearance);
  };
  outline.length = less(section.length);
  outline.width = less(section.width);
  outline.corner = std::max(Millimetres{0.0}, section.corner - mesh_clearance);
  return outline;
}

int pins_for(const Section& outline) {
  // A whole number of spacings must not gain a pin from the last bit.
  const double spacings = rounded(perimeter_mm(outline) / pin_spacing.value(), 1e-6);
  return std::max(least_pins, static_cast<int>(std::ceil(spacings)));
}

std::optional<Millimetres> mesh_opening(std::span<const Pest> pests, Millimetres smallest_bulb) {
  std::optional<Millimetres> narrowest;
  for (const Pest pest : pests) {
    const PestMesh& entry = mesh_against(pest);
    if (!entry.opening || entry.place != MeshPlace::over) continue;
    const bool small = entry.small_bulb_opening && smallest_bulb < small_bulb;
    const Millimetres opening = small ? *entry.small_bulb_opening : *entry.opening;
    narrowest = narrowest ? std::min(*narrowest, opening) : opening;
  }
  return narrowest;
}

std::optional<Millimetres> mesh_beneath(std::span<const Pest> pests) {
  std::optional<Millimetres> narrowest;
  for (const Pest pest : pests) {
    const PestMesh& entry = mesh_against(pest);
    if (!entry.opening || entry.place != MeshPlace::beneath) continue;
    narrowest = narrowest ? std::min(*narrowest, *entry.opening) : *entry.opening;
  }
  return narrowest;
}

std::optional<Mesh> mesh_over_mix(const Section& surface, std::span<const Pest> pests,
                                  Millimetres smallest_bulb) {
  const std::optional<Millimetres> opening = mesh_opening(pests, smallest_bulb);
  if (!opening) return std::nullopt;
  Mesh mesh;
  mesh.outline = mesh_outline(surface);
  mesh.opening = *opening;
  mesh.pins = pins_for(mesh.outline);
  return mesh;
}

std::optional<Mesh> mesh_under_mix(const Section& floor, std::span<const Pest> pests) {
  const std::optional<Millimetres> opening = mesh_beneath(pests);
  if (!opening) return std::nullopt;
  return Mesh{mesh_outline(floor), *opening, 0};
}

}  // namespace bulbwright
