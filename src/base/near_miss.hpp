#pragma once

#include <cstddef>
#include <span>
#include <string>
#include <string_view>

namespace bulbwright {

/// Optimal string alignment distance: insertions, deletions, substitutions and transpositions of
/// neighbours each count one step. O(|a| |b|) time, bytes compared.
std::size_t edit_distance(std::string_view a, std::string_view b);

/// The nearest of `known` within max(1, |text| / 3) steps, as `; did you mean "x"?` or
/// `; did you mean "x" or "y"?` (two at most, ties by order of `known`), or empty where none is
/// near.
std::string did_you_mean(std::string_view text, std::span<const std::string_view> known);

}  // namespace bulbwright
