#pragma once

#include <functional>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "input/faults.hpp"
#include "input/field_values.hpp"
#include "input/located_json.hpp"
#include "input/located_request.hpp"

namespace bulbwright::input {

/// What the reading of one file shares: its name, the faults so far and where each field stood.
struct ReadContext {
  std::string file;
  Faults& faults;
  SourcePlaces written_at;
  bool is_sound = true;  ///< every object so far is one, without unknown keys
};

/// One object of a file under its path ("layers[1]", empty at the top). Says which keys may stand
/// in it, notes the place of each and reads values by kind; every fault goes to the context, and
/// the value is then absent.
class ObjectReader {
 public:
  /// Faults where `value` is no object or holds a key that is not among `keys`.
  ObjectReader(const JsonValue& value, std::string path, std::span<const std::string_view> keys,
               ReadContext& context);

  [[nodiscard]] bool is_object() const { return value_.kind == JsonKind::object; }
  /// It is an object without unknown keys. Where it is not, a missing key may just be misspelt, and
  /// only the misspelling is told.
  [[nodiscard]] bool is_sound() const { return is_sound_; }
  [[nodiscard]] bool has(std::string_view key) const { return value_.find(key) != nullptr; }
  /// The value, whatever its kind, or null where the key is absent.
  [[nodiscard]] const JsonValue* find(std::string_view key) const { return value_.find(key); }
  [[nodiscard]] Field field(std::string_view key) const;
  /// The object itself.
  [[nodiscard]] Field self() const;
  [[nodiscard]] ReadContext& context() const { return context_; }

  /// The text of a key, or nothing where it is absent or, with a fault, no text.
  [[nodiscard]] const std::string* text(std::string_view key, const char* example) const;
  /// The text of a value with a unit, such as "380 mm"; a bare number gets its own message, naming
  /// the two units it most likely lacks.
  [[nodiscard]] const std::string* unit_text(std::string_view key, const char* example,
                                             const char* unit, const char* other_unit) const;
  [[nodiscard]] const JsonValue* number(std::string_view key) const;
  [[nodiscard]] const JsonValue* array(std::string_view key) const;

  /// Text that needs a unit; a bare number is told with the likely ones.
  [[nodiscard]] const std::string* length_text(std::string_view key, LengthUse use) const;
  [[nodiscard]] std::optional<Millimetres> length(std::string_view key, LengthRange range) const;
  [[nodiscard]] std::optional<LengthPair> length_pair(std::string_view key,
                                                      LengthRange range) const;
  [[nodiscard]] std::optional<double> number(std::string_view key, double least, double most) const;
  [[nodiscard]] std::optional<int> whole_number(std::string_view key, int least, int most) const;
  [[nodiscard]] std::optional<bool> truth(std::string_view key) const;
  [[nodiscard]] std::optional<std::string> plain_text(std::string_view key,
                                                      std::size_t longest = longest_name) const;
  [[nodiscard]] std::optional<std::size_t> word(std::string_view key,
                                                std::span<const std::string_view> words,
                                                const char* what) const;
  template <class Enum>
  [[nodiscard]] std::optional<Enum> word(std::string_view key, const char* what) const {
    const auto index = word(key, words_of<Enum>(), what);
    return index ? std::optional{static_cast<Enum>(*index)} : std::nullopt;
  }

  /// Faults a key that is missing from a sound object.
  void missing(std::string_view key, std::string_view expected) const;

 private:
  const JsonValue& value_;
  std::string path_;
  ReadContext& context_;
  bool is_sound_ = true;
};

/// "path[3]".
std::string item_path(std::string_view path, std::size_t index);

}  // namespace bulbwright::input
