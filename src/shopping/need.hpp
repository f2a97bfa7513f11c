#pragma once

#include <span>
#include <string>
#include <vector>

namespace bulbwright {

/// Bulbs of one kind in one layer, to plant and to buy.
struct ShoppingNeed {
  std::string taxon;
  std::string name;
  std::string grade;
  std::string label;
  std::string pot;
  int layer = 1;
  int need = 0;      ///< bulbs to plant
  int spares = 0;    ///< for losses before planting
  int buy = 0;       ///< need and spares; 0 where the grower has them
  bool own = false;  ///< the grower has them already
};

/// Fills in `spares` and `buy` of what the grower has not: at the rate on the sum of a kind, grade
/// and label, shared out over its layers.
void add_spares(std::span<ShoppingNeed> needs, double rate);

/// The needs of one pot as one buys them: what is of one kind, grade and label, own or not, in one
/// line at the place of the first, with spares on the sum; `layer` is that of the first.
std::vector<ShoppingNeed> needs_by_kind(std::span<const ShoppingNeed> needs);

}  // namespace bulbwright
