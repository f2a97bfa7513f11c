#include "base/text.hpp"

#include <array>

#include <catch2/catch.hpp>

using namespace bulbwright;

TEST_CASE("texts are trimmed, split and put in a row", "[text]") {
  CHECK(trimmed(" \ta b\t ") == "a b");
  CHECK(trimmed(" \t ").empty());
  CHECK(split("a | b|", '|') == std::vector<std::string_view>{"a", "b", ""});
  CHECK(split("", '|') == std::vector<std::string_view>{""});
  const std::array<std::string_view, 3> words{"a", "b", "c"};
  CHECK(listed(words) == "a, b and c");
  CHECK(listed(std::span{words}.first(2), "or") == "a or b");
  CHECK(listed(std::span{words}.first(1)) == "a");
  CHECK(listed(std::span{words}.first(0)).empty());
}

TEST_CASE("only ASCII letters change their case", "[text]") {
  CHECK(lower_case("ÄRger AZ[") == "Ärger az[");
  CHECK(capitalised("tulip") == "Tulip");
  CHECK(capitalised("ärger") == "ärger");
  CHECK(capitalised("").empty());
}

TEST_CASE("a number is the whole text or none", "[text][input]") {
  CHECK(plain_number("-12.5") == -12.5);
  for (const char* none : {"", "1 ", " 1", "1e3", "+1", "1,5", "nan", "inf", "0x10", "12 mm"}) {
    CAPTURE(none);
    CHECK_FALSE(plain_number(none));
  }
}
