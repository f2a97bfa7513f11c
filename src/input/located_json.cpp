#include "input/located_json.hpp"

#include <map>
#include <optional>

#include <fmt/core.h>
#include <nlohmann/json.hpp>

#include "base/utf8.hpp"
#include "input/json_syntax.hpp"
#include "input/text_cursor.hpp"

namespace bulbwright::input {
namespace {

constexpr std::string_view byte_order_mark = "\xef\xbb\xbf";

/// The events of nlohmann's parser carry no places. They come in the order of the text, so a cursor
/// walks along: before each event it passes blanks, commas and colons to the token, behind it the
/// token itself.
class TreeBuilder {
 public:
  TreeBuilder(std::string_view text, std::string file) : cursor_{text}, file_{std::move(file)} {}

  bool null() { return add_word(JsonKind::null, false); }
  bool boolean(bool value) { return add_word(JsonKind::boolean, value); }
  bool number_integer(nlohmann::json::number_integer_t value) {
    return add_number(static_cast<double>(value));
  }
  bool number_unsigned(nlohmann::json::number_unsigned_t value) {
    return add_number(static_cast<double>(value));
  }
  bool number_float(double value, const std::string& /*written*/) { return add_number(value); }
  bool string(std::string& value) {
    JsonValue text = begin(JsonKind::text);
    text.text = std::move(value);
    pass_text();
    add(std::move(text));
    return true;
  }
  bool binary(nlohmann::json::binary_t& /*value*/) { return false; }  // not in JSON text
  bool start_object(std::size_t /*unknown*/) { return open(JsonKind::object); }
  bool start_array(std::size_t /*unknown*/) { return open(JsonKind::array); }
  bool end_object() { return close(); }
  bool end_array() { return close(); }

  bool key(std::string& name) {
    to_token();
    const Position at = cursor_.position();
    pass_text();
    Level& level = open_.back();
    const auto [first, fresh] = level.keys.try_emplace(name, at);
    if (!fresh) {
      fault(at, fmt::format("the key {} stands here a second time; the first is at line {}, column "
                            "{}",
                            bulbwright::in_quotes(name), first->second.line, first->second.column));
    }
    level.container->members.push_back({name, at, {}});
    key_ = name;
    after_ = SyntaxContext::After::key;
    return true;
  }

  bool parse_error(std::size_t /*position*/, const std::string& /*token*/,
                   const nlohmann::json::exception& error) {
    constexpr int number_overflow = 406;
    if (error.id == number_overflow) {
      to_token();
      fault(cursor_.position(),
            fmt::format("the number {} is too large",
                        bulbwright::in_quotes(cursor_.rest().substr(0, word_length(cursor_)))));
      return false;
    }
    SyntaxContext context{after_, {}, {}, key_, word_};
    if (!open_.empty()) {
      context.inside = open_.back().container->kind;
      context.opened = open_.back().container->at;
    }
    const SyntaxFault found = explain_syntax(cursor_, context);
    fault(found.at, found.message);
    return false;
  }

  std::vector<InputFault> faults;
  JsonValue root;

 private:
  /// A container that is not closed yet. Nothing is added to its parent meanwhile, so the pointer
  /// stays good.
  struct Level {
    JsonValue* container;
    std::map<std::string, Position> keys;
  };

  void fault(Position at, std::string message) {
    faults.push_back({{file_, at.line, at.column}, std::move(message)});
  }

  void to_token() {
    skip_blanks(cursor_);
    while (cursor_.byte() == ',' || cursor_.byte() == ':') {
      cursor_.advance();
      skip_blanks(cursor_);
    }
  }

  void pass_text() {
    cursor_.advance();
    while (!cursor_.at_end() && cursor_.byte() != '"') {
      cursor_.advance(cursor_.byte() == '\\' ? 2 : 1);
    }
    cursor_.advance();
  }

  JsonValue begin(JsonKind kind) {
    to_token();
    word_.reset();
    JsonValue value;
    value.kind = kind;
    value.at = cursor_.position();
    return value;
  }

  JsonValue* add(JsonValue value) {
    after_ = SyntaxContext::After::value;
    if (open_.empty()) {
      root = std::move(value);
      return &root;
    }
    JsonValue& parent = *open_.back().container;
    if (parent.kind == JsonKind::object) {
      parent.members.back().value = std::move(value);
      return &parent.members.back().value;
    }
    parent.items.push_back(std::move(value));
    return &parent.items.back();
  }

  bool add_word(JsonKind kind, bool truth) {
    JsonValue value = begin(kind);
    value.boolean = truth;
    value.text = kind == JsonKind::null ? "null" : truth ? "true" : "false";
    return add_plain(std::move(value));
  }

  bool add_number(double number) {
    JsonValue value = begin(JsonKind::number);
    value.number = number;
    value.text = std::string{cursor_.rest().substr(0, number_length(cursor_))};
    return add_plain(std::move(value));
  }

  /// A value without quotes, its text as written.
  bool add_plain(JsonValue value) {
    word_ = cursor_;
    cursor_.advance(value.text.size());
    add(std::move(value));
    return true;
  }

  bool open(JsonKind kind) {
    JsonValue value = begin(kind);
    if (open_.size() == static_cast<std::size_t>(deepest_nesting)) {
      fault(value.at, fmt::format("arrays and objects are nested deeper than {}", deepest_nesting));
      return false;
    }
    cursor_.advance();
    open_.push_back({add(std::move(value)), {}});
    after_ = SyntaxContext::After::opening;
    return true;
  }

  bool close() {
    to_token();
    word_.reset();
    cursor_.advance();
    open_.pop_back();
    after_ = SyntaxContext::After::value;
    return true;
  }

  TextCursor cursor_;
  std::string file_;
  std::vector<Level> open_;
  SyntaxContext::After after_ = SyntaxContext::After::nothing;
  std::string key_;
  std::optional<TextCursor> word_;
};

/// nlohmann takes a NUL for the end of the text and checks UTF-8 inside texts only.
void check_bytes(std::string_view text, const std::string& file) {
  if (text.starts_with("\xff\xfe") || text.starts_with("\xfe\xff")) {
    throw InputError{{file, 0, 0}, "the file is UTF-16; save it as UTF-8"};
  }
  TextCursor cursor{text};
  while (!cursor.at_end()) {
    const CodePoint point = code_point_at(text, cursor.offset());
    const auto byte = static_cast<unsigned char>(cursor.byte());
    const SourcePlace place{file, cursor.position().line, cursor.position().column};
    if (!point.valid) {
      throw InputError{place, fmt::format("the byte \\x{:02x} is no UTF-8; save the file as UTF-8",
                                          static_cast<unsigned>(byte))};
    }
    if (byte == 0) throw InputError{place, "a NUL byte; the file is no text"};
    cursor.advance(point.bytes);
  }
}

}  // namespace

const char* with_article(JsonKind kind) {
  switch (kind) {
    case JsonKind::null:
      return "null";
    case JsonKind::boolean:
      return "true or false";
    case JsonKind::number:
      return "a number";
    case JsonKind::text:
      return "a text";
    case JsonKind::array:
      return "an array";
    case JsonKind::object:
      return "an object";
  }
  return "";
}

const JsonValue* JsonValue::find(std::string_view key) const {
  for (const JsonMember& member : members) {
    if (member.key == key) return &member.value;
  }
  return nullptr;
}

JsonValue read_located_json(std::string_view text, const std::string& file) {
  if (text.starts_with(byte_order_mark)) text.remove_prefix(byte_order_mark.size());
  check_bytes(text, file);
  if (text.starts_with(byte_order_mark)) {
    throw InputError{{file, 1, 1}, "a second byte order mark at the start"};
  }
  TreeBuilder builder{text, file};
  const bool read = nlohmann::json::sax_parse(text.begin(), text.end(), &builder,
                                              nlohmann::json::input_format_t::json, true, true);
  if (!read || !builder.faults.empty()) throw InputError{std::move(builder.faults)};
  return std::move(builder.root);
}

}  // namespace bulbwright::input
