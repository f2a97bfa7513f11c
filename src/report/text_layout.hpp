#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "report/text_style.hpp"

namespace bulbwright::report {

using Lines = std::vector<std::string>;

/// Columns that a document may fill: style.width, at least 40, at most 99.
int text_width(const TextStyle& style);

/// Terminal columns of UTF-8 text: combining marks none, wide East Asian characters and emoji two,
/// everything else one. Text must be printable() first.
int columns(std::string_view text);

/// Safe to print: control characters (line ends too) and bytes that are not UTF-8 become '?', runs
/// of them one '?'. What the grower wrote passes here before it is printed.
std::string printable(std::string_view text);

/// printable() text of our own, in the style's character set: in ASCII mode °, ×, ≥, dashes,
/// quotes and fractions get their ASCII forms, and what has none becomes '?'.
std::string in_style(std::string_view text, const TextStyle& style);

/// `text` with spaces after (before) it up to `width` columns; unchanged where it is longer.
std::string pad_right(std::string_view text, int width);
std::string pad_left(std::string_view text, int width);

/// At most `width` columns, the last ones an ellipsis where something was cut.
std::string cut_to(std::string_view text, int width, const TextStyle& style);

/// Lines of at most `width` columns, broken at spaces; a longer word is broken where it must be.
/// Empty text gives no line. A no-break space (U+00A0) holds its neighbours together; joined()
/// prints it as a space.
Lines wrap(std::string_view text, int width);

/// `label` at the left of the first line, `text` wrapped beside it from column `indent` on; a label
/// that is wider takes a line of its own.
Lines hanging(std::string_view label, std::string_view text, int indent, int width);

/// Appends `more` to `lines`.
void append(Lines& lines, const Lines& more);

/// Bold, or red, when the style has colour; the text itself otherwise.
std::string bold(std::string_view text, const TextStyle& style);
std::string red(std::string_view text, const TextStyle& style);

/// The text with its no-break spaces as spaces.
std::string plain_spaces(std::string_view text);

/// Every line with '\n' after it and no space before it; no-break spaces become spaces.
std::string joined(const Lines& lines);

}  // namespace bulbwright::report
