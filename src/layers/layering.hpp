#pragma once

#include <span>
#include <vector>

#include "base/notice.hpp"
#include "catalogue/catalogue.hpp"
#include "layers/layer_request.hpp"
#include "layers/planned_layer.hpp"
#include "layers/stack.hpp"
#include "packing/choices.hpp"
#include "packing/packing.hpp"
#include "pot/pot.hpp"

namespace bulbwright {

/// From the layers asked for to bulbs with a depth and a place each: sizes of the bulbs, stack,
/// packing.

/// One kind of a layer with its taxon found and its bulbs measured.
struct LayerKind {
  const Taxon* taxon = nullptr;
  double share = 1.0;
  double grade_cm = 0.0;  ///< circumference planned with
  Millimetres diameter;   ///< grade / pi
  Millimetres height;     ///< diameter x the kind's ratio
};

/// A layer with everything that packing and stacking ask.
struct ResolvedLayer {
  LayerRequest request;
  std::vector<LayerKind> kinds;
  Millimetres gap;
  Millimetres wall;
};

/// Clearance to the inner wall where none is asked for; of a pot forced indoors forcing_wall.
/// common practice
inline constexpr Millimetres default_wall{10.0};
/// A pot forced indoors: shoulders nearly touch. Checked against the trade's bulbs per 15 cm pot.
inline constexpr Millimetres forcing_gap{3.0};
inline constexpr Millimetres forcing_wall{5.0};
/// A finger between bulbs where there is one layer only. common practice
inline constexpr Millimetres single_layer_gap{18.0};
/// "Set close", the other figure that the text gives. common practice
inline constexpr Millimetres close_gap{10.0};
/// Nearer than this bulbs are as good as touching.
inline constexpr Millimetres least_gap{3.0};

/// The gap that a kind's container spacing leaves between bulbs of its usual grade, to 5 mm: 25 mm
/// for most. In a single layer kinds with the usual 25 mm stand a finger apart.
Millimetres usual_gap(const Taxon& taxon, bool single_layer);

/// Finds the taxa and sizes of every layer; `catalogue` must outlive the result.
/// @throws InvalidValue for a taxon that the catalogue does not have.
std::vector<ResolvedLayer> resolve_layers(std::span<const LayerRequest> layers,
                                          const Catalogue& catalogue);

/// The stack of these layers in that pot.
Stack stack_of(std::span<const ResolvedLayer> layers, const Pot& pot);

/// The layers with their places, or the reasons why they do not fit.
struct Layering {
  bool ok = true;
  std::vector<PlannedLayer> layers;
  std::vector<Notice> notices;
};

/// Stacks and packs. With an infeasible stack the result holds the notice (what height would do,
/// which layer to leave out) and no layers.
/// @throws InvalidValue for a layer that might hold more than most_bulbs_of_a_layer, before it is
/// packed.
Layering plan_layers(std::span<const ResolvedLayer> layers, const Pot& pot, Effort effort,
                     PackingCache& cache);

}  // namespace bulbwright
