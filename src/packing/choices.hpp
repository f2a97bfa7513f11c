#pragma once

#include <cstddef>

#include "base/enum_words.hpp"

namespace bulbwright {

/// How much search: a number of steps, never of seconds, so the answer is the same on any machine.
enum class Effort { quick, normal, thorough };
constexpr auto enum_words(Effort) {
  return words_to<Effort::thorough>("quick", "normal", "thorough");
}

/// Types spread evenly, or each type kept together (drift): in bands across the longer side in the
/// order given, no bulb more than the largest distance past one of a later kind. Spread evenly
/// means: of a kind that makes up at most a third of the bulbs no more than largest_clump stand
/// together, one within 1.2 times the least distance (half of both diameters and the gap) of
/// another. A commoner kind cannot but form chains. Of all neighbours, so near, those of one kind
/// are as few as changing bulbs over makes them: for halves half to three quarters of what chance
/// does.
enum class Arrange { mixed, drift };
constexpr auto enum_words(Arrange) {
  return words_to<Arrange::drift>("mixed", "drift");
}
inline constexpr std::size_t largest_clump = 3;

}  // namespace bulbwright
