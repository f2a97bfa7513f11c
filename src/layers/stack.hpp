#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "base/calendar_day.hpp"
#include "base/quantity.hpp"

namespace bulbwright {

/// How deep the layers of a pot sit. Heights are measured upwards from the inner floor, depths from
/// the mix surface down to a bulb's base, as growers plant. Layers count from the bottom.

/// Mix under the deepest bulbs. common practice
inline constexpr Millimetres default_floor_margin{50.0};
/// Mix over the noses of a lower layer, wanted and at the least. common practice
inline constexpr Millimetres wanted_over_nose{25.0};
inline constexpr Millimetres least_over_nose{10.0};
/// Mix over every nose: at least the smaller of this and the bulb's height. common practice
inline constexpr Millimetres usual_cover{25.0};

/// Bulbs forced indoors stand in bowls and pans with an inch of mix beneath them. common practice
inline constexpr Millimetres forcing_floor_margin{25.0};
/// Tulips, daffodils and hyacinths forced indoors: "leave the top half inch of each bulb exposed".
/// Source: Nebraska Extension in Lancaster County, Lincoln Journal Star, 3 October 2020.
inline constexpr Millimetres forcing_exposed{13.0};
/// Bulbs flatter than this (crocus, grape hyacinths) are covered by half an inch when forced.
/// common practice
inline constexpr Millimetres exposed_from_height{35.0};
inline constexpr Millimetres forcing_cover{13.0};

/// What one layer asks for. bulb_height > 0 (of the tallest bulb), 0 < least <= most, weight > 0.
struct StackLayer {
  Millimetres bulb_height;
  Millimetres wanted_depth;  ///< taken within [least, most]
  Millimetres least_depth;
  Millimetres most_depth;
  double weight = 1.0;  ///< of this layer's departure from the wanted depth
  /// Mix over its own noses at the least, below 0 where they stand out of it; nothing: usual_cover
  /// or the bulb's height, whichever is less.
  std::optional<Millimetres> least_cover{};
};

/// Kinds that share a layer: the tallest bulb, the common limits, the mean of the wanted depths
/// (weights as given) within them, the sum of the weights. Nothing where the limits exclude one
/// another or there is no kind.
std::optional<StackLayer> common_layer(std::span<const StackLayer> kinds);

struct StackRequest {
  std::vector<StackLayer> layers;  ///< bottom first
  Millimetres mix_surface;         ///< above the inner floor
  Millimetres floor_margin = default_floor_margin;
};

/// Where one layer sits.
struct StackedLayer {
  Millimetres base;   ///< bulb base above the inner floor
  Millimetres nose;   ///< bulb top above the inner floor
  Millimetres depth;  ///< mix surface to bulb base
  Millimetres cover;  ///< mix surface to nose
};

struct Stack {
  bool feasible = false;
  std::vector<StackedLayer> layers;  ///< bottom first; empty where infeasible
  /// Mix over lower noses that the layers were placed with: the wanted 25 mm, or the largest that
  /// fits, at least 10 mm.
  Millimetres over_nose;
  bool over_nose_reduced = false;  ///< under the wanted 25 mm: worth a notice

  /// Lowest mix surface above the floor with which these layers fit, at 10 mm over the noses;
  /// nothing where no height would do because depth limits exclude one another. Pot height = mix
  /// surface + headspace.
  std::optional<Millimetres> least_surface;
  /// Where infeasible: what to leave out, bottom-first indices in rising order; the layer whose
  /// absence frees most, then the next until the rest fits. Empty where no layer would be left.
  std::vector<std::size_t> drop;
};

/// The depths nearest the wanted ones (least sum of weight x squared departure) that keep: every
/// depth limit, the floor margin, the mix over lower noses, and over every nose the least cover
/// that its layer asks for. Exact. O(n^2) for n layers, to find the mix over noses; O(n) from
/// there.
///
/// With u_i = base_i - sum of (bulb_height_j + over_nose) over the layers j below, this is isotonic
/// regression with bounds; pooled blocks take their weighted mean clamped to their common bounds.
/// Source: Best, Chakravarti, Ubhaya, "Minimizing separable convex functions subject to simple
/// chain constraints", SIAM J. Optim. 10 (2000), for pooling convex functions (from memory).
Stack stack_layers(const StackRequest& request);

/// What decides a layer's place.
struct OrderKey {
  std::optional<Day> peak;  ///< predicted, at this place and planting
  int season_class = 0;     ///< catalogue's bloom_season_order: breaks ties of the peak only
  Millimetres bulb_height;
};

/// Indices of `keys` from the bottom layer up: the latest peak lowest, equal peaks by season class,
/// then the tallest bulb lowest, then as given. Where any peak is unknown, season class stands for
/// all peaks.
std::vector<std::size_t> order_layers(std::span<const OrderKey> keys);

/// For an order that the grower gave: the layers (bottom-first indices) predicted to flower before
/// the layer right above them, on the predicted peaks alone.
std::vector<std::size_t> flowering_before_the_layer_above(std::span<const OrderKey> bottom_first);

}  // namespace bulbwright
