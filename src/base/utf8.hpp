#pragma once

#include <cstddef>
#include <string_view>

namespace bulbwright {

/// Bytes of the well-formed UTF-8 sequence that starts at text[i], 1 to 4, or 0 where there is
/// none: stray or missing continuation bytes, overlong forms, surrogates, above U+10FFFF.
/// Source: The Unicode Standard, table 3-7, "Well-Formed UTF-8 Byte Sequences".
std::size_t utf8_sequence_length(std::string_view text, std::size_t i);

/// Code points in well-formed UTF-8 (a broken byte counts as one).
std::size_t code_points(std::string_view text);

}  // namespace bulbwright
