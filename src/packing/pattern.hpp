#pragma once

#include <vector>

#include "base/enum_words.hpp"
#include "packing/packing.hpp"

namespace bulbwright {

/// Layouts that a hand can lay by eye: rings round the rim and within, or rows. dense: as
/// pack_most() sets them.
enum class Pattern { dense, rings, rows };
constexpr auto enum_words(Pattern) {
  return words_to<Pattern::rows>("dense", "rings", "rows");
}

struct PatternLayout {
  Packing packing;
  std::vector<int> sets;  ///< bulbs of each ring from the rim inwards, or of each row in order
  bool upright = false;   ///< rows run across the length, not along it
};

/// The most bulbs of one kind that rings or rows hold with `gap` between neighbours and `wall` to
/// the outline, certified as pack_most() does. Rings: bulbs evenly along curves of one depth (in a
/// round section turned against each other as suits best), the innermost a row on the axis where it
/// is flat. Rows: straight, equally far apart, each its own mirror image or, where that holds more,
/// every second moved the other way. `pattern` is not dense.
PatternLayout lay_pattern(const Section& section, const PackKind& kind, Millimetres gap,
                          Millimetres wall, Pattern pattern);

}  // namespace bulbwright
