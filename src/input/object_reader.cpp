#include "input/object_reader.hpp"

#include <algorithm>

#include <fmt/core.h>

#include "base/near_miss.hpp"
#include "input/pot_file_keys.hpp"

namespace bulbwright::input {
namespace {

std::string listed(std::span<const std::string_view> keys) {
  std::string text;
  for (const std::string_view key : keys) {
    if (key.starts_with('$')) continue;
    text += text.empty() ? "" : ", ";
    text += key;
  }
  return text;
}

/// Where a key belongs that stands in the wrong object.
std::string elsewhere(std::string_view key) {
  for (const KeyTable& table : key_tables) {
    if (std::find(table.keys.begin(), table.keys.end(), key) != table.keys.end()) {
      return fmt::format("; it belongs in {}", table.where);
    }
  }
  return {};
}

}  // namespace

std::string item_path(std::string_view path, std::size_t index) {
  return fmt::format("{}[{}]", path, index);
}

ObjectReader::ObjectReader(const JsonValue& value, std::string path,
                           std::span<const std::string_view> keys, ReadContext& context)
    : value_{value}, path_{std::move(path)}, context_{context} {
  if (!is_object()) {
    is_sound_ = context.is_sound = false;
    context_.faults.add(
        self(), fmt::format("{} where an object was expected, {{ … }}", with_article(value.kind)));
    return;
  }
  for (const JsonMember& member : value.members) {
    const SourcePlace at{context_.file, member.key_at.line, member.key_at.column};
    if (std::find(keys.begin(), keys.end(), member.key) != keys.end()) {
      context_.written_at[field(member.key).name] = field(member.key).place;
      continue;
    }
    is_sound_ = context.is_sound = false;
    std::string hint = did_you_mean(member.key, keys);
    if (hint.empty()) hint = elsewhere(member.key);
    if (hint.empty()) hint = "; expected " + listed(keys);
    context_.faults.add(at, fmt::format("unknown key {}{}", in_quotes(member.key), hint));
  }
}

Field ObjectReader::field(std::string_view key) const {
  const JsonValue* value = value_.find(key);
  const Position at = value == nullptr ? value_.at : value->at;
  return {path_.empty() ? std::string{key} : fmt::format("{}.{}", path_, key),
          {context_.file, at.line, at.column}};
}

Field ObjectReader::self() const {
  return {path_.empty() ? "the file" : path_, {context_.file, value_.at.line, value_.at.column}};
}

const std::string* ObjectReader::text(std::string_view key, const char* example) const {
  const JsonValue* value = value_.find(key);
  if (value == nullptr) return nullptr;
  if (value->kind == JsonKind::text) return &value->text;
  if (value->kind == JsonKind::number) {
    context_.faults.add(field(key), fmt::format("{} is a bare number; expected text such as {}",
                                                bare(value->text), example));
  } else {
    context_.faults.add(field(key), fmt::format("{} where text was expected, such as {}",
                                                with_article(value->kind), example));
  }
  return nullptr;
}

const std::string* ObjectReader::unit_text(std::string_view key, const char* example,
                                           const char* unit, const char* other_unit) const {
  const JsonValue* value = value_.find(key);
  if (value == nullptr || value->kind != JsonKind::number) return text(key, example);
  context_.faults.add(field(key), fmt::format("{0} has no unit; did you mean \"{0} {1}\" or "
                                              "\"{0} {2}\"?",
                                              bare(value->text), unit, other_unit));
  return nullptr;
}

const JsonValue* ObjectReader::number(std::string_view key) const {
  const JsonValue* value = value_.find(key);
  if (value == nullptr || value->kind == JsonKind::number) return value;
  std::string hint = value->kind == JsonKind::text ? ", without quotes" : "";
  context_.faults.add(field(key), fmt::format("{} where a number was expected{}",
                                              value->kind == JsonKind::text
                                                  ? "the text " + in_quotes(value->text)
                                                  : std::string{with_article(value->kind)},
                                              hint));
  return nullptr;
}

const JsonValue* ObjectReader::array(std::string_view key) const {
  const JsonValue* value = value_.find(key);
  if (value == nullptr || value->kind == JsonKind::array) return value;
  context_.faults.add(
      field(key), fmt::format("{} where an array was expected, [ … ]", with_article(value->kind)));
  return nullptr;
}

const std::string* ObjectReader::length_text(std::string_view key, LengthUse use) const {
  const JsonValue* value = value_.find(key);
  if (value == nullptr || value->kind != JsonKind::number) return text(key, "\"380 mm\"");
  const std::string number = bare(value->text);
  context_.faults.add(field(key), fmt::format("{} has no unit; did you mean {}?", number,
                                              with_likely_units(number, use)));
  return nullptr;
}

std::optional<Millimetres> ObjectReader::length(std::string_view key, LengthRange range) const {
  const std::string* written = length_text(key, range.use);
  if (written == nullptr) return std::nullopt;
  return read_length(field(key), *written, range, context_.faults);
}

std::optional<LengthPair> ObjectReader::length_pair(std::string_view key, LengthRange range) const {
  const std::string* written = length_text(key, range.use);
  if (written == nullptr) return std::nullopt;
  return read_length_pair(field(key), *written, range, context_.faults);
}

std::optional<double> ObjectReader::number(std::string_view key, double least, double most) const {
  const JsonValue* value = number(key);
  if (value == nullptr) return std::nullopt;
  return read_number(field(key), value->number, value->text, least, most, context_.faults);
}

std::optional<int> ObjectReader::whole_number(std::string_view key, int least, int most) const {
  const JsonValue* value = number(key);
  if (value == nullptr) return std::nullopt;
  return read_whole_number(field(key), value->number, value->text, least, most, context_.faults);
}

std::optional<bool> ObjectReader::truth(std::string_view key) const {
  const JsonValue* value = value_.find(key);
  if (value == nullptr) return std::nullopt;
  if (value->kind == JsonKind::boolean) return value->boolean;
  context_.faults.add(field(key), fmt::format("{} where true or false was expected, without quotes",
                                              with_article(value->kind)));
  return std::nullopt;
}

std::optional<std::string> ObjectReader::plain_text(std::string_view key,
                                                    std::size_t longest) const {
  const std::string* written = text(key, "\"south steps\"");
  if (written == nullptr) return std::nullopt;
  return read_plain_text(field(key), *written, context_.faults, longest);
}

std::optional<std::size_t> ObjectReader::word(std::string_view key,
                                              std::span<const std::string_view> words,
                                              const char* what) const {
  const std::string example = in_quotes(words.front());
  const std::string* written = text(key, example.c_str());
  if (written == nullptr) return std::nullopt;
  return read_word(field(key), *written, words, what, context_.faults);
}

void ObjectReader::missing(std::string_view key, std::string_view expected) const {
  if (!is_sound_ || has(key)) return;
  context_.faults.add(field(key), fmt::format("missing; {}", expected));
}

}  // namespace bulbwright::input
