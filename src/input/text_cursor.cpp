#include "input/text_cursor.hpp"

namespace bulbwright::input {
namespace {

bool skip_comment(TextCursor& cursor) {
  if (cursor.byte(1) == '/') {
    while (!cursor.at_end() && cursor.byte() != '\n' && cursor.byte() != '\r') cursor.advance();
    return true;
  }
  if (cursor.byte(1) != '*') return false;
  const std::size_t end = cursor.rest().find("*/", 2);
  if (end == std::string_view::npos) return false;
  cursor.advance(end + 2);
  return true;
}

}  // namespace

bool skip_blanks(TextCursor& cursor) {
  while (!cursor.at_end()) {
    const char byte = cursor.byte();
    if (byte == ' ' || byte == '\t' || byte == '\n' || byte == '\r') {
      cursor.advance();
    } else if (byte == '/') {
      if (!skip_comment(cursor)) return false;
    } else {
      return true;
    }
  }
  return true;
}

std::size_t number_length(const TextCursor& cursor) {
  std::size_t n = 0;
  const auto digits = [&] {
    while (cursor.byte(n) >= '0' && cursor.byte(n) <= '9') ++n;
  };
  if (cursor.byte(n) == '-') ++n;
  if (cursor.byte(n) == '0') {
    ++n;
  } else {
    digits();
  }
  if (cursor.byte(n) == '.') {
    ++n;
    digits();
  }
  if (cursor.byte(n) == 'e' || cursor.byte(n) == 'E') {
    ++n;
    if (cursor.byte(n) == '+' || cursor.byte(n) == '-') ++n;
    digits();
  }
  return n;
}

std::size_t word_length(const TextCursor& cursor) {
  const std::size_t end = cursor.rest().find_first_of(" \t\r\n\",:[]{}/");
  return end == std::string_view::npos ? cursor.rest().size() : end;
}

}  // namespace bulbwright::input
