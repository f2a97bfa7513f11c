#pragma once

#include <span>

#include "shopping/pack_sizes.hpp"

namespace bulbwright::fixture {

/// Pieces in all of these packs.
inline int pieces_in(std::span<const Pack> packs) {
  int pieces = 0;
  for (const Pack& pack : packs) pieces += pack.size * pack.count;
  return pieces;
}

}  // namespace bulbwright::fixture
