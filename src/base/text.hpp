#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace bulbwright {

/// `text` without the spaces and tabs at its ends.
std::string_view trimmed(std::string_view text);

/// The parts between the marks, trimmed; one empty part for an empty text.
std::vector<std::string_view> split(std::string_view text, char mark);

/// Lower case of the ASCII letters; other letters are left.
std::string lower_case(std::string_view text);

/// The first letter in upper case, if it is an ASCII letter.
std::string capitalised(std::string_view text);

/// "a", "a and b", "a, b and c", with `last` for the "and".
std::string listed(std::span<const std::string> words, std::string_view last = "and");
std::string listed(std::span<const std::string_view> words, std::string_view last = "and");

/// The number that all of `text` is: decimal point, no exponent, no plus sign, finite.
std::optional<double> plain_number(std::string_view text);

}  // namespace bulbwright
