#pragma once

#include <span>
#include <vector>

#include "layers/layering.hpp"
#include "layers/stack.hpp"

namespace bulbwright {

/// By how much each layer of a pot lies deeper than its kinds are usually planted (negative:
/// shallower), in whole centimetres: nobody sets a bulb nearer, and what a centimetre does to the
/// flowers is under a day. By layer, bottom first, and by kind within it; zero for bulbs forced
/// indoors, which sit as high as they can, and where the stack does not fit the pot.
/// `stack`: stack_of() the same layers.
std::vector<std::vector<int>> deeper_than_usual_cm(std::span<const ResolvedLayer> layers,
                                                   const Stack& stack);

}  // namespace bulbwright
