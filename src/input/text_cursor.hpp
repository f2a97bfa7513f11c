#pragma once

#include <cstddef>
#include <string_view>

#include "input/located_json.hpp"

namespace bulbwright::input {

/// A place in a UTF-8 text that knows its line and column.
class TextCursor {
 public:
  explicit TextCursor(std::string_view text) : text_{text} {}

  [[nodiscard]] bool at_end() const { return offset_ >= text_.size(); }
  /// The byte here, NUL at the end.
  [[nodiscard]] char byte(std::size_t ahead = 0) const {
    return offset_ + ahead < text_.size() ? text_[offset_ + ahead] : '\0';
  }
  [[nodiscard]] std::size_t offset() const { return offset_; }
  [[nodiscard]] Position position() const { return position_; }
  [[nodiscard]] std::string_view rest() const { return text_.substr(offset_); }

  /// Moves on by one byte; a continuation byte opens no new column.
  void advance() {
    if (at_end()) return;
    ++offset_;
    if (text_[offset_ - 1] == '\n') {
      ++position_.line;
      position_.column = 1;
    } else if (at_end() || (static_cast<unsigned char>(text_[offset_]) & 0xc0U) != 0x80U) {
      ++position_.column;
    }
  }
  void advance(std::size_t bytes) {
    for (std::size_t k = 0; k < bytes; ++k) advance();
  }

 private:
  std::string_view text_;
  std::size_t offset_ = 0;
  Position position_;
};

/// Passes white space and // and /* */ comments. False at a comment that is not closed, or that
/// no second sign makes one (the cursor then stands at its slash).
bool skip_blanks(TextCursor& cursor);

/// Bytes of the JSON number that starts here, by its grammar: "0" of "02026", "15" of "15in".
std::size_t number_length(const TextCursor& cursor);

/// Bytes of the word or number that starts here, up to white space, a quote or punctuation.
std::size_t word_length(const TextCursor& cursor);

}  // namespace bulbwright::input
