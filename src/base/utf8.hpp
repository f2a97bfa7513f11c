#pragma once

#include <cstddef>
#include <string_view>

namespace bulbwright {

/// One code point and its place in a text.
struct CodePoint {
  char32_t value = 0;
  std::size_t bytes = 1;  ///< 1 where not valid, so that a walk always gets on
  bool valid = false;
};

/// The code point that starts at text[i], i < text.size(); not valid for what UTF-8 forbids: stray
/// or missing continuation bytes, overlong forms, surrogates, values above U+10FFFF.
/// Source: The Unicode Standard, table 3-7, "Well-Formed UTF-8 Byte Sequences".
CodePoint code_point_at(std::string_view text, std::size_t i);

/// Code points in well-formed UTF-8 (a broken byte counts as one).
std::size_t code_points(std::string_view text);

/// What must not reach a terminal: C0 and C1 controls and DEL, line and paragraph separators
/// (U+2028, U+2029), and what turns the direction of the text after it (U+061C, U+202A to U+202E,
/// U+2066 to U+2069). Source: Unicode Standard Annex 9, 2.1 to 2.7, directional formatting
/// characters; the two marks U+200E and U+200F turn nothing and are left.
bool is_control(char32_t value);

}  // namespace bulbwright
