#include "layers/stack.hpp"

#include <algorithm>
#include <cassert>
#include <limits>
#include <numeric>

namespace bulbwright {
namespace {

/// Lengths nearer than this are the same: no decision hangs on the last bit.
constexpr double same_mm = 1e-6;

struct Bounds {
  double least = 0.0;
  double most = 0.0;
};

double least_depth_mm(const StackLayer& layer) {
  const double height = layer.bulb_height.value();
  const double usual = std::min(height, usual_cover.value());
  const double cover = layer.least_cover ? layer.least_cover->value() : usual;
  return std::max(layer.least_depth.value(), height + cover);
}

/// Greatest depth of layer i: its own limit, and for the lowest the floor margin.
double greatest_depth_mm(const StackRequest& request, std::size_t i) {
  const double own = request.layers[i].most_depth.value();
  return i > 0 ? own : std::min(own, (request.mix_surface - request.floor_margin).value());
}

/// Calls visit(i, k, depth) for every layer i and every layer k at or above it: the depth that
/// layer i needs because of k, that is the least depth of k and the bulbs from i up to k, with no
/// mix over their k - i noses yet.
template <class Visit>
void for_each_need(std::span<const StackLayer> layers, Visit visit) {
  for (std::size_t i = 0; i < layers.size(); ++i) {
    double bulbs = 0.0;
    for (std::size_t k = i; k < layers.size(); ++k) {
      visit(i, k, least_depth_mm(layers[k]) + bulbs);
      bulbs += layers[k].bulb_height.value();
    }
  }
}

/// By how much the layers fail to fit with the least mix over noses; 0 or less: they fit.
double shortfall_mm(const StackRequest& request) {
  double worst = -std::numeric_limits<double>::infinity();
  for_each_need(request.layers, [&](std::size_t i, std::size_t k, double depth) {
    const double needed = depth + static_cast<double>(k - i) * least_over_nose.value();
    worst = std::max(worst, needed - greatest_depth_mm(request, i));
  });
  return worst;
}

/// Largest mix over noses up to the wanted one; nothing where less than the least would be needed.
/// Every pair of layers i below k allows (greatest depth of i - what lies between) / (k - i).
std::optional<double> largest_over_nose(const StackRequest& request) {
  double over_nose = wanted_over_nose.value();
  bool fits = true;
  for_each_need(request.layers, [&](std::size_t i, std::size_t k, double depth) {
    const double room = greatest_depth_mm(request, i) - depth;
    if (k == i) fits = fits && room >= -same_mm;
    if (k > i) over_nose = std::min(over_nose, room / static_cast<double>(k - i));
  });
  if (!fits || over_nose < least_over_nose.value() - same_mm) return std::nullopt;
  if (over_nose > wanted_over_nose.value() - same_mm) return wanted_over_nose.value();
  return std::max(over_nose, least_over_nose.value());
}

/// Lowest surface at which the layers fit: what the lowest layer needs, and the floor margin.
std::optional<Millimetres> lowest_surface(const StackRequest& request, double over_nose) {
  double lowest = 0.0;
  bool fits = true;
  for_each_need(request.layers, [&](std::size_t i, std::size_t k, double depth) {
    const double needed = depth + static_cast<double>(k - i) * over_nose;
    fits = fits && needed <= request.layers[i].most_depth.value() + same_mm;
    if (i == 0) lowest = std::max(lowest, needed);
  });
  if (!fits) return std::nullopt;
  return Millimetres{lowest} + request.floor_margin;
}

/// Neighbouring layers that move as one.
struct Block {
  double weight = 0.0;
  double weighted_sum = 0.0;
  Bounds bounds;
  std::size_t size = 0;

  [[nodiscard]] double value() const {
    // std::clamp would want least <= most to the last bit.
    return std::max(bounds.least, std::min(bounds.most, weighted_sum / weight));
  }
};

Block pooled(const Block& a, const Block& b) {
  return {a.weight + b.weight,
          a.weighted_sum + b.weighted_sum,
          {std::max(a.bounds.least, b.bounds.least), std::min(a.bounds.most, b.bounds.most)},
          a.size + b.size};
}

/// Bounds of the bases with the layers below taken out. They need not be made monotone: blocks pool
/// only where the upper one wants to lie lower, and then a feasible stack leaves them common
/// bounds.
std::vector<Bounds> bounds_of_bases(const StackRequest& request, std::span<const double> below) {
  const double surface = request.mix_surface.value();
  std::vector<Bounds> bounds;
  for (std::size_t i = 0; i < request.layers.size(); ++i) {
    const double least = surface - greatest_depth_mm(request, i) - below[i];
    const double most = surface - least_depth_mm(request.layers[i]) - below[i];
    // Within the tolerance the two may cross; the lower one keeps the floor margin.
    bounds.push_back({least, std::max(least, most)});
  }
  return bounds;
}

/// Bases above the floor for a feasible mix over noses.
std::vector<double> solve_bases(const StackRequest& request, double over_nose) {
  const auto& layers = request.layers;
  std::vector<double> below(layers.size(), 0.0);
  for (std::size_t i = 1; i < layers.size(); ++i)
    below[i] = below[i - 1] + layers[i - 1].bulb_height.value() + over_nose;
  const std::vector<Bounds> bounds = bounds_of_bases(request, below);

  std::vector<Block> blocks;
  for (std::size_t i = 0; i < layers.size(); ++i) {
    const double wanted = request.mix_surface.value() - layers[i].wanted_depth.value() - below[i];
    blocks.push_back({layers[i].weight, layers[i].weight * wanted, bounds[i], 1});
    while (blocks.size() > 1 && blocks[blocks.size() - 2].value() > blocks.back().value()) {
      const Block upper = blocks.back();
      blocks.pop_back();
      blocks.back() = pooled(blocks.back(), upper);
    }
  }
  std::vector<double> bases;
  for (const Block& block : blocks) {
    for (std::size_t j = 0; j < block.size; ++j)
      bases.push_back(block.value() + below[bases.size()]);
  }
  return bases;
}

std::vector<StackedLayer> placed_layers(const StackRequest& request, double over_nose) {
  const std::vector<double> bases = solve_bases(request, over_nose);
  std::vector<StackedLayer> placed;
  for (std::size_t i = 0; i < bases.size(); ++i) {
    StackedLayer layer;
    layer.base = Millimetres{bases[i]};
    layer.nose = layer.base + request.layers[i].bulb_height;
    layer.depth = request.mix_surface - layer.base;
    layer.cover = request.mix_surface - layer.nose;
    placed.push_back(layer);
  }
  return placed;
}

/// Leaves out, one at a time, the layer whose absence leaves the least shortfall (on equal ones the
/// highest) until the rest fits.
std::vector<std::size_t> layers_to_drop(StackRequest request) {
  std::vector<std::size_t> kept(request.layers.size());
  std::iota(kept.begin(), kept.end(), std::size_t{0});
  std::vector<std::size_t> drop;
  while (shortfall_mm(request) > same_mm) {
    if (request.layers.size() <= 1) return {};
    std::size_t best = 0;
    double best_shortfall = 0.0;
    for (std::size_t i = 0; i < request.layers.size(); ++i) {
      StackRequest rest = request;
      rest.layers.erase(rest.layers.begin() + static_cast<std::ptrdiff_t>(i));
      const double shortfall = rounded(shortfall_mm(rest), 1e-3);
      if (i == 0 || shortfall <= best_shortfall) {
        best = i;
        best_shortfall = shortfall;
      }
    }
    drop.push_back(kept[best]);
    kept.erase(kept.begin() + static_cast<std::ptrdiff_t>(best));
    request.layers.erase(request.layers.begin() + static_cast<std::ptrdiff_t>(best));
  }
  std::sort(drop.begin(), drop.end());
  return drop;
}

StackLayer normalised(StackLayer layer) {
  assert(layer.bulb_height > Millimetres{0.0} && layer.weight > 0.0);
  assert(layer.least_depth <= layer.most_depth);
  layer.wanted_depth = std::max(layer.least_depth, std::min(layer.most_depth, layer.wanted_depth));
  return layer;
}

}  // namespace

std::optional<StackLayer> common_layer(std::span<const StackLayer> kinds) {
  if (kinds.empty()) return std::nullopt;
  StackLayer common = kinds.front();
  common.weight = 0.0;
  double wanted = 0.0;
  for (const StackLayer& kind : kinds) {
    common.bulb_height = std::max(common.bulb_height, kind.bulb_height);
    common.least_depth = std::max(common.least_depth, kind.least_depth);
    common.most_depth = std::min(common.most_depth, kind.most_depth);
    common.weight += kind.weight;
    wanted += kind.weight * kind.wanted_depth.value();
    // The usual cover where any kind of the layer wants it.
    if (!kind.least_cover || !common.least_cover) common.least_cover.reset();
    if (common.least_cover) common.least_cover = std::max(*common.least_cover, *kind.least_cover);
  }
  if (common.least_depth > common.most_depth) return std::nullopt;
  common.wanted_depth = Millimetres{wanted / common.weight};
  return normalised(common);
}

Stack stack_layers(const StackRequest& request) {
  StackRequest checked = request;
  for (StackLayer& layer : checked.layers) layer = normalised(layer);

  Stack stack;
  stack.least_surface = lowest_surface(checked, least_over_nose.value());
  const std::optional<double> over_nose = largest_over_nose(checked);
  if (!over_nose) {
    stack.over_nose = least_over_nose;
    stack.drop = layers_to_drop(checked);
    return stack;
  }
  stack.feasible = true;
  stack.over_nose = Millimetres{*over_nose};
  stack.over_nose_reduced = stack.over_nose < wanted_over_nose;
  stack.layers = placed_layers(checked, *over_nose);
  return stack;
}

}  // namespace bulbwright
