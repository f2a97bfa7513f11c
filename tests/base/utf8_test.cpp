#include "base/utf8.hpp"

#include <string>

#include <catch2/catch.hpp>

using namespace bulbwright;

namespace {

/// Every string of up to four bytes that the table calls well formed, written as ranges.
/// Source: The Unicode Standard, table 3-7.
struct Row {
  unsigned first_low, first_high;
  unsigned second_low, second_high;
  std::size_t length;
};
constexpr Row table[] = {
    {0x00, 0x7f, 0, 0, 1},       {0xc2, 0xdf, 0x80, 0xbf, 2}, {0xe0, 0xe0, 0xa0, 0xbf, 3},
    {0xe1, 0xec, 0x80, 0xbf, 3}, {0xed, 0xed, 0x80, 0x9f, 3}, {0xee, 0xef, 0x80, 0xbf, 3},
    {0xf0, 0xf0, 0x90, 0xbf, 4}, {0xf1, 0xf3, 0x80, 0xbf, 4}, {0xf4, 0xf4, 0x80, 0x8f, 4}};

std::size_t by_table(unsigned first, unsigned second) {
  for (const Row& row : table) {
    if (first < row.first_low || first > row.first_high) continue;
    if (row.length == 1) return 1;
    if (second >= row.second_low && second <= row.second_high) return row.length;
  }
  return 0;
}

}  // namespace

TEST_CASE("every pair of leading bytes is judged as the Unicode table does", "[utf8][published]") {
  for (unsigned first = 0; first < 256; ++first) {
    for (unsigned second = 0; second < 256; ++second) {
      const std::string text{static_cast<char>(first), static_cast<char>(second), '\x80', '\x80'};
      const CodePoint point = code_point_at(text, 0);
      CHECK((point.valid ? point.bytes : 0) == by_table(first, second));
    }
  }
}

TEST_CASE("a sequence cut short is none", "[utf8][input]") {
  for (const char* cut : {"\xc3", "\xe2\x80", "\xf0\x9f\x8c", "\xe2\x80("}) {
    CHECK_FALSE(code_point_at(cut, 0).valid);
    CHECK(code_point_at(cut, 0).bytes == 1);
  }
}

// RFC 3629, section 7, examples.
TEST_CASE("the code point is the one that was encoded", "[utf8][published]") {
  CHECK(code_point_at("A\xe2\x89\xa2\xce\x91.", 1).value == 0x2262);
  CHECK(code_point_at("A\xe2\x89\xa2\xce\x91.", 4).value == 0x0391);
  CHECK(code_point_at("\xed\x95\x9c\xea\xb5\xad\xec\x96\xb4", 3).value == 0xad6d);
  CHECK(code_point_at("\xf0\xa3\x8e\xb4", 0).value == 0x233b4);
}

TEST_CASE("code points are counted, not bytes", "[utf8]") {
  CHECK(code_points("") == 0);
  CHECK(code_points("5 \xc2\xb0\x43") == 4);
  CHECK(code_points("\xf0\x9f\x8c\xb7\xff") == 2);
}
