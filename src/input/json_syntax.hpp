#pragma once

#include <optional>
#include <string>

#include "input/text_cursor.hpp"

namespace bulbwright::input {

/// How far a JSON text had been read when the parser gave up.
struct SyntaxContext {
  enum class After { nothing, opening, key, value };
  After after = After::nothing;
  std::optional<JsonKind> inside;  ///< the innermost open container, array or object
  Position opened;                 ///< where it opens
  std::string key;                 ///< the key just read
  std::optional<TextCursor> word;  ///< at the number, true, false or null just read
};

struct SyntaxFault {
  Position at;
  std::string message;
};

/// Says in plain words what is wrong with a JSON text. `cursor` stands behind the last piece that
/// was read well. The parser decides *whether* a text is wrong; this only finds the words and the
/// place, so a gap here can make a message poor but never let a fault pass.
SyntaxFault explain_syntax(TextCursor cursor, const SyntaxContext& context);

}  // namespace bulbwright::input
