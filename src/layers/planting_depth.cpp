#include "layers/planting_depth.hpp"

#include <cmath>

namespace bulbwright {

std::vector<std::vector<int>> deeper_than_usual_cm(std::span<const ResolvedLayer> layers,
                                                   const Stack& stack) {
  std::vector<std::vector<int>> deeper;
  for (const ResolvedLayer& layer : layers) deeper.emplace_back(layer.kinds.size(), 0);
  if (!stack.feasible) return deeper;
  for (std::size_t i = 0; i < layers.size(); ++i) {
    if (layers[i].request.use == Use::forcing) continue;
    for (std::size_t j = 0; j < layers[i].kinds.size(); ++j) {
      const double usual_mm = layers[i].kinds[j].taxon->depth_mm.value;
      const double cm = rounded((stack.layers[i].depth.value() - usual_mm) / 10.0, 0.01);
      deeper[i][j] = static_cast<int>(std::lround(cm));
    }
  }
  return deeper;
}

}  // namespace bulbwright
