#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/error.hpp"

namespace bulbwright::input {

/// Line and column from 1, in code points; a tab counts one.
struct Position {
  int line = 1;
  int column = 1;
};

enum class JsonKind { null, boolean, number, text, array, object };

/// "a number", "a text", "an object", for messages.
const char* with_article(JsonKind kind);

struct JsonMember;

/// A JSON value that knows where it stands.
struct JsonValue {
  JsonKind kind = JsonKind::null;
  Position at;  ///< of its first character
  bool boolean = false;
  double number = 0.0;              ///< always finite
  std::string text;                 ///< a text's value; a number or word as written
  std::vector<JsonValue> items;     ///< of an array
  std::vector<JsonMember> members;  ///< of an object, in the order of the file

  /// The member's value, or null. The pointer lives as long as this value is not changed.
  [[nodiscard]] const JsonValue* find(std::string_view key) const;
};

struct JsonMember {
  std::string key;
  Position key_at;
  JsonValue value;
};

/// Deeper nesting is refused.
inline constexpr int deepest_nesting = 32;

/// Reads RFC 8259 JSON in UTF-8, with // and /* */ comments allowed. A byte order mark at the start
/// is skipped, as RFC 8259 part 8.1 allows.
/// @throws InputError with every fault found: the syntax error that ends the reading, after
/// repeated keys; or bytes that are not UTF-8, nesting deeper than 32, numbers beyond the range of
/// a double, text after the end.
JsonValue read_located_json(std::string_view text, const std::string& file);

}  // namespace bulbwright::input
