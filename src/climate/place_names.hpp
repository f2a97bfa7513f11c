#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace bulbwright {

/// Lower case without accents, for comparing names of places.
std::string folded_name(std::string_view name);

/// What stands before the first comma: "Chico" of "Chico, California".
std::string_view town_of(std::string_view name);

/// The words of a folded text: what blanks, commas and hyphens part.
std::vector<std::string> words_of_name(std::string_view folded);

/// Does `word` stand in `folded` at the beginning of a word?
bool begins_a_word(std::string_view folded, std::string_view word);

}  // namespace bulbwright
