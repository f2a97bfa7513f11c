#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/text.hpp"
#include "plan/plan.hpp"
#include "report/text_style.hpp"

namespace bulbwright::report {

/// Words of a plan for people, shared by its parts.

/// "bottom", "middle", "top"; with more layers "second", "third", ... between; "only" for one.
std::string layer_word(int level, std::size_t layers);

/// "Large Dutch crocuses", "Corn lilies", "Glory-of-the-snow": several bulbs of a kind.
std::string several(std::string_view name);

/// "14 Triumph tulips", "1 Triumph tulip", with the grower's own label `"TT26"` where there is one.
std::string bulbs_text(const LayerBulbs& bulbs, const TextStyle& style);

/// capitalised(), with a full stop at its end.
std::string sentence(std::string_view text);

/// A caution's line for the bench, its weight in the style's units; empty where it has none.
std::string caution_line(const Caution& caution, const TextStyle& style);

/// "round", "oval", "rectangular", "half-round".
const char* shape_word(Shape shape);

}  // namespace bulbwright::report
