#include "input/located_json.hpp"

#include <string>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

using namespace bulbwright;
using namespace bulbwright::input;

namespace {

std::string fault_of(const std::string& text) {
  try {
    (void)read_located_json(text, "a.json");
    return "";
  } catch (const InputError& error) {
    return describe(error);
  }
}

std::string at(int line, int column, const std::string& message) {
  return "a.json:" + std::to_string(line) + ":" + std::to_string(column) + ": error: " + message +
         "\n";
}

nlohmann::ordered_json plain(const JsonValue& value) {
  switch (value.kind) {
    case JsonKind::null:
      return nullptr;
    case JsonKind::boolean:
      return value.boolean;
    case JsonKind::number:
      return value.number;
    case JsonKind::text:
      return value.text;
    case JsonKind::array: {
      auto array = nlohmann::ordered_json::array();
      for (const JsonValue& item : value.items) array.push_back(plain(item));
      return array;
    }
    case JsonKind::object:
      break;
  }
  auto object = nlohmann::ordered_json::object();
  for (const JsonMember& member : value.members) object[member.key] = plain(member.value);
  return object;
}

/// The first byte at a line and column, found by counting afresh.
char byte_at(const std::string& text, Position where) {
  Position here;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (here.line == where.line && here.column == where.column) return text[i];
    const bool last_of_point =
        i + 1 == text.size() || (static_cast<unsigned char>(text[i + 1]) & 0xc0U) != 0x80U;
    if (text[i] == '\n') {
      ++here.line;
      here.column = 1;
    } else if (last_of_point) {
      ++here.column;
    }
  }
  return '\0';
}

void check_places(const std::string& text, const JsonValue& value) {
  const char first = byte_at(text, value.at);
  switch (value.kind) {
    case JsonKind::null:
      CHECK(first == 'n');
      break;
    case JsonKind::boolean:
      CHECK(first == (value.boolean ? 't' : 'f'));
      break;
    case JsonKind::number:
      CHECK(first == value.text.front());
      break;
    case JsonKind::text:
      CHECK(first == '"');
      break;
    case JsonKind::array:
      CHECK(first == '[');
      break;
    case JsonKind::object:
      CHECK(first == '{');
      break;
  }
  for (const JsonValue& item : value.items) check_places(text, item);
  for (const JsonMember& member : value.members) {
    CHECK(byte_at(text, member.key_at) == '"');
    check_places(text, member.value);
  }
}

constexpr const char* sample =
    "// first\n{ \"a\\\"é\": [1, -2.5e3,\t0, true, false , null],/* 2\n"
    "lines */ \"ü\":{\"🌷\" : \"\\u00e9\\\\\", \"e\":{}, \"f\":[]} }\r\n";

}  // namespace

TEST_CASE("values are those of the library that parses them", "[json][oracle]") {
  CHECK(plain(read_located_json(sample, "a.json")) ==
        nlohmann::ordered_json::parse(sample, nullptr, true, true));
}

TEST_CASE("every key and value stands where its first character is", "[json][law]") {
  check_places(sample, read_located_json(sample, "a.json"));
}

TEST_CASE("columns count characters, a tab as one", "[json]") {
  const JsonValue root = read_located_json("{\"é🌷\":\t7}", "a.json");
  CHECK(root.members[0].value.at.line == 1);
  CHECK(root.members[0].value.at.column == 8);
}

TEST_CASE("syntax errors are told in plain words at their place", "[json][input]") {
  CHECK(fault_of("") == at(1, 1, "the file holds no data"));
  CHECK(fault_of(" \n// only words\n") == at(3, 1, "the file holds no data"));
  CHECK(fault_of("{ \"a\" 1 }") == at(1, 7, R"(expected ":" after the key "a", found "1")"));
  CHECK(fault_of("{ \"a\": }") == at(1, 8, R"(expected a value for the key "a", found "}")"));
  CHECK(fault_of("{ \"a\": 1 \"b\": 2 }") == at(1, 10, "a comma is missing before a text"));
  CHECK(fault_of("{ \"a\": 1, }") == at(1, 9, R"(the comma before "}" is one too many)"));
  CHECK(fault_of("[1,,2]") == at(1, 4, R"(expected a value, found ",")"));
  CHECK(fault_of("[1 2]") == at(1, 4, R"(expected "," or "]", found "2")"));
  CHECK(fault_of("{ a: 1 }") == at(1, 3, R"(expected a key in double quotes, found "a")"));
  CHECK(fault_of("['a']") == at(1, 2, "text stands in double quotes (\"), not in single ones"));
  CHECK(fault_of("[round]") == at(1, 2, R"("round" needs double quotes around it)"));
  CHECK(
      fault_of("[True]") ==
      at(1, 2,
         R"("True" is no value here; expected true, false or null without quotes, or text in double quotes)"));
  CHECK(
      fault_of("[truely]") ==
      at(1, 2,
         R"("truely" is no value here; expected true, false or null without quotes, or text in double quotes)"));
  CHECK(fault_of("[02]") == at(1, 2, R"("02" is no number; leave out the leading zero)"));
  CHECK(fault_of("[+2]") == at(1, 2, R"("+2" is no number; leave out the plus sign)"));
  CHECK(fault_of("[.5]") == at(1, 2, R"(".5" is no number; write a zero before the point)"));
  CHECK(fault_of("[1.]") == at(1, 2, R"("1." is no number)"));
  CHECK(fault_of("[15in]") ==
        at(1, 2,
           R"("15in" is no number; a value with a unit stands in double quotes, like "380 mm")"));
  CHECK(fault_of("[15 in]") == at(1, 2, R"("15 in" needs double quotes around it)"));
  CHECK(fault_of("[1e400]") == at(1, 2, R"(the number "1e400" is too large)"));
  CHECK(fault_of("[\"a\nb\"]") ==
        at(1, 2, "the text that starts here has no closing quote on its line"));
  CHECK(fault_of("[\"a\tb\"]") == at(1, 4, "a tab inside a text; write \\t"));
  CHECK(fault_of("[\"a\x01\"]") == at(1, 4, "a control character inside a text; write \\u0001"));
  CHECK(
      fault_of("[\"\\q\"]") ==
      at(1, 3,
         "a backslash stands only before \" \\ / b f n r t or uXXXX; for the sign itself write it "
         "twice"));
  CHECK(fault_of("[\"\\u12g4\"]") == at(1, 3, "\\u needs four hexadecimal digits after it"));
  CHECK(fault_of("[\"\\ud800\"]") ==
        at(1, 3, "half of a surrogate pair; write the character itself"));
  CHECK(fault_of("{ \"a\": [1") ==
        at(1, 10, "the file ends inside the array opened at line 1, column 8; a \"]\" is missing"));
  CHECK(fault_of("[1] /* open") == at(1, 5, "the comment that starts here is not closed"));
  CHECK(fault_of("[1] / x") == at(1, 5, "a lone \"/\"; a comment starts with //"));
}

TEST_CASE("what the parser would let pass is refused", "[json][input]") {
  CHECK(fault_of("{ \"a\": 1,\n  \"a\": 2 }") ==
        at(2, 3, R"(the key "a" stands here a second time; the first is at line 1, column 3)"));
  CHECK(fault_of("{ \"a\": 1, \"\\u0061\": 2 }") ==
        at(1, 11, R"(the key "a" stands here a second time; the first is at line 1, column 3)"));
  CHECK(fault_of("[1]\n]") == at(2, 1, R"(text after the end of the data, "]")"));
  CHECK(fault_of("{} {}") == at(1, 4, R"(text after the end of the data, "{")"));
  CHECK(fault_of(std::string{"{}\0x", 4}) == at(1, 3, "a NUL byte; the file is no text"));
  CHECK(fault_of("{ \"é\": \"\xe9\" }") ==
        at(1, 9, "the byte \\xe9 is no UTF-8; save the file as UTF-8"));
  CHECK(fault_of("\xff\xfe{\0}\0") == "a.json: error: the file is UTF-16; save it as UTF-8\n");
}

TEST_CASE("nesting ends at thirty-two however long the file", "[json][input]") {
  CHECK(fault_of(std::string(32, '[') + std::string(32, ']')).empty());
  CHECK(fault_of(std::string(33, '[') + std::string(33, ']')) ==
        at(1, 33, "arrays and objects are nested deeper than 32"));
  CHECK(fault_of(std::string(900'000, '[')) ==
        at(1, 33, "arrays and objects are nested deeper than 32"));
}

TEST_CASE("a byte order mark is passed over", "[json][input]") {
  CHECK(read_located_json("\xef\xbb\xbf{\"a\":1}", "a.json").members[0].key_at.column == 2);
  CHECK(fault_of("\xef\xbb\xbf\xef\xbb\xbf{}") ==
        at(1, 1, "a second byte order mark at the start"));
}
