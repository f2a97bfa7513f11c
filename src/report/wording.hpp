#pragma once

#include <span>
#include <stdexcept>
#include <string>
#include <string_view>

#include <fmt/core.h>

#include "base/notice.hpp"
#include "report/text_style.hpp"

namespace bulbwright::report {

/// Sentences are patterns with places for figures: "{kinds}: {given} of cold where {least} is the
/// least". A place is a figure's name (word_of(DetailName)), or "kinds" for the kinds that it is
/// said of; the figure's type and the style's units make its words. After a colon:
///   {gap:fine} a length worked to     {height:up} upwards, for "at least"
///   {leaves:tall} in cm or inches     {mix:half} to half a degree C
///   {gap:days} "1 day", "12 days"     {off:late} "3 days late", "1 day early"
///   {open:is|are} by number           {mouths:or} "a, b or c"    {stored:and}  {closed:semi} "; "
///   {distance:far} in km or miles     {height:sea} above the sea, in m or feet
///   {rain:rain} in mm or inches
///   {height:higher} "12 m higher"     {nights:warmer} "1.2 C warmer", "colder"
///   {kinds:many} always in the plural
/// What stands in [ ] is left out where a figure named in it is missing.

/// What a pattern is filled from.
struct Said {
  std::span<const KindName> kinds;
  std::span<const Detail> details;
};

/// True where every figure is there that the pattern names outside [ ].
bool can_say(std::string_view pattern, const Said& said);

/// The pattern filled.
/// @throws std::logic_error for a place that no figure fills.
std::string worded(std::string_view pattern, const Said& said, const TextStyle& style);

/// A row of a table of sentences. A code may have several; the first that can be said is.
template <class Code>
struct WordRow {
  Code code;
  const char* pattern;
};

template <class Code>
std::string from_table(std::span<const WordRow<Code>> rows, Code code, const Said& said,
                       const TextStyle& style) {
  for (const WordRow<Code>& row : rows) {
    if (row.code == code && can_say(row.pattern, said)) return worded(row.pattern, said, style);
  }
  throw std::logic_error{fmt::format("no sentence for code {}", static_cast<int>(code))};
}

/// True where every one of `codes` codes has a row: for static_assert beside a table.
template <class Code, std::size_t rows_count>
constexpr bool every_code_has_words(const WordRow<Code> (&rows)[rows_count], std::size_t codes) {
  for (std::size_t code = 0; code < codes; ++code) {
    bool found = false;
    for (const WordRow<Code>& row : rows)
      found = found || static_cast<std::size_t>(row.code) == code;
    if (!found) return false;
  }
  return true;
}

}  // namespace bulbwright::report
