#include "input/json_syntax.hpp"

#include <algorithm>
#include <array>
#include <string_view>

#include <fmt/core.h>

#include "base/near_miss.hpp"
#include "base/utf8.hpp"

namespace bulbwright::input {
namespace {

bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}
bool is_digit(char c) {
  return c >= '0' && c <= '9';
}
bool is_hex_digit(char c) {
  return is_digit(c) || (c >= 'a' && c <= 'f') || (c >= 'A' && c <= 'F');
}

/// What stands at the cursor, for "found ...".
std::string found(const TextCursor& cursor) {
  if (cursor.at_end()) return "the end of the file";
  if (cursor.byte() == '"') return "a text";
  const std::size_t length = std::max({word_length(cursor), code_point_at(cursor.rest(), 0).bytes});
  return in_quotes(cursor.rest().substr(0, length));
}

SyntaxFault explain_end(const TextCursor& cursor, const SyntaxContext& context) {
  if (!context.inside) return {cursor.position(), "the file ends where a value was expected"};
  const bool object = *context.inside == JsonKind::object;
  return {
      cursor.position(),
      fmt::format("the file ends inside the {} opened at line {}, column {}; a \"{}\" is missing",
                  object ? "object" : "array", context.opened.line, context.opened.column,
                  object ? '}' : ']')};
}

/// \uXXXX at the cursor (on the backslash): the unit's value, or nothing where it is malformed.
std::optional<unsigned> unicode_unit(const TextCursor& cursor) {
  if (cursor.byte() != '\\' || cursor.byte(1) != 'u') return std::nullopt;
  unsigned value = 0;
  for (std::size_t k = 2; k < 6; ++k) {
    const char c = cursor.byte(k);
    if (!is_hex_digit(c)) return std::nullopt;
    const int digit = is_digit(c) ? c - '0' : (c | 0x20) - 'a' + 10;
    value = value * 16 + static_cast<unsigned>(digit);
  }
  return value;
}

/// The fault of an escape at the cursor, or nothing; passes a good one.
std::optional<SyntaxFault> explain_escape(TextCursor& cursor) {
  const Position at = cursor.position();
  if (cursor.byte(1) != 'u') {
    if (std::string_view{"\"\\/bfnrt"}.find(cursor.byte(1)) == std::string_view::npos ||
        cursor.byte(1) == '\0') {
      return SyntaxFault{at,
                         "a backslash stands only before \" \\ / b f n r t or uXXXX; for the "
                         "sign itself write it twice"};
    }
    cursor.advance(2);
    return std::nullopt;
  }
  const std::optional<unsigned> unit = unicode_unit(cursor);
  if (!unit) return SyntaxFault{at, "\\u needs four hexadecimal digits after it"};
  cursor.advance(6);
  if (*unit < 0xd800 || *unit > 0xdfff) return std::nullopt;
  const std::optional<unsigned> second = unicode_unit(cursor);
  if (*unit > 0xdbff || !second || *second < 0xdc00 || *second > 0xdfff) {
    return SyntaxFault{at, "half of a surrogate pair; write the character itself"};
  }
  cursor.advance(6);
  return std::nullopt;
}

SyntaxFault explain_text(TextCursor cursor) {
  const Position start = cursor.position();
  cursor.advance();
  while (!cursor.at_end() && cursor.byte() != '"') {
    const auto byte = static_cast<unsigned char>(cursor.byte());
    if (byte == '\n' || byte == '\r') break;
    if (byte < 0x20) {
      return {cursor.position(), byte == '\t' ? std::string{"a tab inside a text; write \\t"}
                                              : fmt::format("a control character inside a text; "
                                                            "write \\u{:04x}",
                                                            byte)};
    }
    if (byte == '\\') {
      if (const auto fault = explain_escape(cursor)) return *fault;
    } else {
      cursor.advance();
    }
  }
  return {start, "the text that starts here has no closing quote on its line"};
}

SyntaxFault explain_number(const TextCursor& cursor) {
  std::string_view word = cursor.rest().substr(0, word_length(cursor));
  std::string hint;
  if (word.front() == '+') hint = "; leave out the plus sign";
  const std::string_view digits = word.substr(word.front() == '-' ? 1 : 0);
  if (digits.size() > 1 && digits[0] == '0' && is_digit(digits[1])) {
    hint = "; leave out the leading zero";
  }
  if (digits.starts_with('.')) hint = "; write a zero before the point";
  if (std::any_of(digits.begin(), digits.end(), is_letter) && !digits.starts_with('.')) {
    hint = "; a value with a unit stands in double quotes, like \"380 mm\"";
  }
  return {cursor.position(), fmt::format("{} is no number{}", in_quotes(word), hint)};
}

SyntaxFault explain_word(const TextCursor& cursor) {
  constexpr std::array<std::string_view, 3> words{"true", "false", "null"};
  const std::string_view word = cursor.rest().substr(0, word_length(cursor));
  std::string lower{word};
  for (char& c : lower) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  }
  const std::string near = did_you_mean(lower, words);
  if (!near.empty() && std::find(words.begin(), words.end(), word) == words.end()) {
    return {cursor.position(),
            fmt::format("{} is no value here; {} without quotes, or text in double quotes",
                        in_quotes(word), "expected true, false or null")};
  }
  return {cursor.position(), fmt::format("{} needs double quotes around it", in_quotes(word))};
}

/// A number or word just read that runs on ("02026", "15in", "15 in", "truely"), if that is the
/// fault.
std::optional<SyntaxFault> explain_running_on(const TextCursor& cursor,
                                              const SyntaxContext& context) {
  if (!context.word || cursor.at_end()) return std::nullopt;
  const bool number = !is_letter(context.word->byte());
  const std::size_t whole = word_length(*context.word);
  const bool adjacent = context.word->offset() + whole > cursor.offset();
  if (adjacent) return number ? explain_number(*context.word) : explain_word(*context.word);
  if (!number || !is_letter(cursor.byte())) return std::nullopt;
  const std::string both{context.word->rest().substr(
      0, cursor.offset() - context.word->offset() + word_length(cursor))};
  return SyntaxFault{context.word->position(),
                     fmt::format("{} needs double quotes around it", in_quotes(both))};
}

SyntaxFault explain_value(const TextCursor& cursor, const SyntaxContext& context) {
  if (cursor.at_end()) return explain_end(cursor, context);
  const char c = cursor.byte();
  if (c == '"') return explain_text(cursor);
  if (is_digit(c) || c == '-' || c == '+' || c == '.') return explain_number(cursor);
  if (c == '\'') {
    return {cursor.position(), "text stands in double quotes (\"), not in single ones"};
  }
  if (is_letter(c)) return explain_word(cursor);
  if (context.after == SyntaxContext::After::key) {
    return {cursor.position(), fmt::format("expected a value for the key {}, found {}",
                                           in_quotes(context.key), found(cursor))};
  }
  return {cursor.position(), fmt::format("expected a value, found {}", found(cursor))};
}

SyntaxFault explain_key(const TextCursor& cursor, const SyntaxContext& context) {
  if (cursor.at_end()) return explain_end(cursor, context);
  if (cursor.byte() == '"') return explain_text(cursor);
  return {cursor.position(),
          fmt::format("expected a key in double quotes, found {}", found(cursor))};
}

/// Behind a complete value inside an array or object.
SyntaxFault explain_next(TextCursor cursor, const SyntaxContext& context) {
  const bool object = context.inside == JsonKind::object;
  const char closing = object ? '}' : ']';
  if (cursor.at_end()) return explain_end(cursor, context);
  if (cursor.byte() == ',') {
    const Position comma = cursor.position();
    cursor.advance();
    if (!skip_blanks(cursor)) return {cursor.position(), "this comment is not closed"};
    if (cursor.byte() == closing) {
      return {comma, fmt::format("the comma before \"{}\" is one too many", closing)};
    }
    return object ? explain_key(cursor, context) : explain_value(cursor, context);
  }
  if (cursor.byte() == '"' || cursor.byte() == '{' || cursor.byte() == '[') {
    return {cursor.position(), fmt::format("a comma is missing before {}", found(cursor))};
  }
  return {cursor.position(),
          fmt::format("expected \",\" or \"{}\", found {}", closing, found(cursor))};
}

}  // namespace

SyntaxFault explain_syntax(TextCursor cursor, const SyntaxContext& context) {
  using After = SyntaxContext::After;
  if (!skip_blanks(cursor)) {
    return {cursor.position(), cursor.byte(1) == '*' ? "the comment that starts here is not closed"
                                                     : "a lone \"/\"; a comment starts with //"};
  }
  if (context.after == After::key) {
    if (cursor.at_end()) return explain_end(cursor, context);
    if (cursor.byte() != ':') {
      return {cursor.position(), fmt::format("expected \":\" after the key {}, found {}",
                                             in_quotes(context.key), found(cursor))};
    }
    cursor.advance();
    if (!skip_blanks(cursor)) return {cursor.position(), "this comment is not closed"};
    return explain_value(cursor, context);
  }
  if (context.after == After::value) {
    if (const auto fault = explain_running_on(cursor, context)) return *fault;
  }
  if (!context.inside) {
    if (context.after == After::value) {
      return {cursor.position(), fmt::format("text after the end of the data, {}", found(cursor))};
    }
    if (cursor.at_end()) return {cursor.position(), "the file holds no data"};
    return explain_value(cursor, context);
  }
  if (context.after == After::value) return explain_next(cursor, context);
  return context.inside == JsonKind::object ? explain_key(cursor, context)
                                            : explain_value(cursor, context);
}

}  // namespace bulbwright::input
