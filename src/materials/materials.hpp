#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "base/quantity.hpp"
#include "materials/lifting.hpp"
#include "materials/mesh.hpp"
#include "pot/pot.hpp"

namespace bulbwright {

/// What fills a pot and what it weighs then. Numbers and codes only; renderers write the words.

// --- the mix -----------------------------------------------------------------------------------

/// Loose mix bought for one litre settled in the pot. common practice (a peat substrate measured
/// 1.2 times less dense in growers' pots than pressed: Acta Horticulturae 238, p. 23)
inline constexpr double loose_per_settled = 1.15;
/// Perlite as a share of the loose mix for a wet winter; 0.2 to 0.3. common practice
inline constexpr double wet_winter_perlite_share = 0.25;

/// A mix by what bags and handbooks state of it.
struct MixKind {
  double dry_g_per_l = 120.0;  ///< dry bulk density
  double air_percent = 20.0;   ///< air left after draining, by volume
};

/// Wet density after draining, kg/L: (96.72 + 0.062 VW - AV) / 100 for VW g/L dry and AV % air.
/// Regression over 238 substrates; 0.07 to 0.15 too high for seven of eight measured mixes.
/// Source: Acta Horticulturae 294, article 2 (abstract).
double drained_density(const MixKind& mix);

/// Range of drained densities measured for peat and bark mixes, kg/L. Source: University of
/// Arkansas, Greenhouse Management unit 7; Int. J. Agronomy 2012, 978528, table 1.
inline constexpr double least_drained_density = 0.65;
inline constexpr double most_drained_density = 1.0;

/// One layer as it fills the pot.
struct FilledLayer {
  Millimetres base;    ///< bulb base above the inner floor
  Litres bulb_volume;  ///< of all its bulbs
};

struct MixNeed {
  /// Settled, in the order of filling: up to the lowest layer, from each layer to the next, and
  /// from the highest to the surface; the bulbs of the layer below taken off. Adds up to `settled`.
  std::vector<Litres> by_step;
  Litres settled;
  Litres loose;    ///< to have ready: settled x 1.15
  Litres perlite;  ///< of the loose volume
};

/// Mix up to the pot's mix surface. `layers` bottom first, bases within the pot, perlite_share 0 to
/// 1.
MixNeed mix_need(const Pot& pot, std::span<const FilledLayer> layers, double perlite_share);

// --- the weight --------------------------------------------------------------------------------

struct FilledWeight {
  Kilograms shell;      ///< empty and dry; real pots vary by a quarter
  Kilograms shell_wet;  ///< with the water a porous wall takes up
  Kilograms mix;        ///< watered and drained
  Kilograms bulbs;
  Kilograms total;      ///< watered and drained: "about"
  Kilograms low, high;  ///< total with 0.65 and 1.0 kg/L of mix and the shell a quarter off
};

FilledWeight filled_weight(const Pot& pot, Litres settled_mix, Litres bulbs,
                           const MixKind& mix = {});

/// Empty pot of that material, dry.
Kilograms shell_weight(const Pot& pot, Millimetres wall, Millimetres floor,
                       double density_kg_per_l);

// --- all of it ---------------------------------------------------------------------------------

/// Bulbs of one kind in one layer.
struct MaterialsKind {
  std::optional<double> genus_shape;  ///< shape factor of the genus, where it has one
  double circumference_cm = 0.0;
  double height_to_diameter = 1.0;
  int count = 0;
};

struct MaterialsLayer {
  Millimetres base;  ///< bulb base above the inner floor
  std::vector<MaterialsKind> kinds;
};

struct Materials {
  MixNeed mix;
  std::optional<Mesh> mesh, mesh_beneath;
  int labels = 0;  ///< one a kind and layer, stuck in by the grower
  FilledWeight weight;
  LiftGuideline lift;  ///< of `weight.total`, by the shorter outer side of the rim
};

/// Everything a planted pot needs besides bulbs. `layers` bottom first.
Materials materials_for(const Pot& pot, std::span<const MaterialsLayer> layers,
                        std::span<const Pest> pests, bool wet_winter);

}  // namespace bulbwright
