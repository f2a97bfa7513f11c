#include "report/text_layout.hpp"

#include <catch2/catch.hpp>

using namespace bulbwright;
using namespace bulbwright::report;

// Widths: Unicode Standard Annex 11, "East Asian Width" (U+7403 wide, U+00E9 neutral, U+0301
// combining).
TEST_CASE("columns count what a terminal shows, not bytes", "[text_layout][published]") {
  CHECK(columns("abc") == 3);
  CHECK(columns("\u00E9") == 1);
  CHECK(columns("e\u0301") == 1);
  CHECK(columns("\u7403\u6839") == 4);
  CHECK(columns("\u2588\u2591") == 2);
  CHECK(pad_right("\u00E9", 3) == "\u00E9  ");
  CHECK(pad_left("\u7403", 3) == " \u7403");
}

// Ill-formed sequences: RFC 3629, "UTF-8", section 3 (overlong forms, surrogates) and section 10.
TEST_CASE("what cannot be printed safely becomes a question mark", "[text_layout][input]") {
  CHECK(printable("a\x1b[31mb") == "a?[31mb");
  CHECK(printable("a\r\n\tb") == "a?b");
  CHECK(printable("\xc0\x80") == "?");
  CHECK(printable("\xed\xa0\x80x") == "?x");
  CHECK(printable("\xe2\x80\xae reversed") == "? reversed");
  CHECK(printable("caf\u00E9 \u7403") == "caf\u00E9 \u7403");
}

TEST_CASE("ASCII mode has a form for the signs that plans use", "[text_layout]") {
  const TextStyle ascii{false, 80, Units::millimetres, false};
  CHECK(in_style("5 \u00B0C \u2265 3 \u00D7 2 \u2013 \u2019", ascii) == "5 C >= 3 x 2 - '");
  CHECK(in_style("\u7403", ascii) == "?");
  CHECK(in_style("\u00B0", TextStyle{}) == "\u00B0");
}

TEST_CASE("wrapping keeps every word and never passes the width", "[text_layout][law]") {
  const std::string text =
      "Set nineteen bulbs on this, a-word-much-longer-than-any-of-these-lines-can-hold and more";
  for (int width = 1; width <= 100; ++width) {
    const Lines lines = wrap(text, width);
    std::string letters, expected;
    for (const std::string& line : lines) {
      CHECK(columns(line) <= width);
      for (const char c : line) letters += c == ' ' ? "" : std::string(1, c);
    }
    for (const char c : text) expected += c == ' ' ? "" : std::string(1, c);
    CHECK(letters == expected);
  }
  CHECK(wrap("", 10).empty());
  CHECK(wrap("  a   b ", 10) == Lines{"a b"});
}

TEST_CASE("a number stays with its unit", "[text_layout]") {
  CHECK(joined(wrap("fill to 275\u00A0mm", 8)) == "fill to\n275 mm\n");
}

TEST_CASE("a label hangs beside its text", "[text_layout]") {
  CHECK(hanging("Buy", "one two three", 6, 14) == Lines{"Buy   one two", "      three"});
  CHECK(hanging("Refrigerate", "one", 6, 14) == Lines{"Refrigerate", "      one"});
  CHECK(hanging("Buy", "", 6, 14) == Lines{"Buy"});
}

TEST_CASE("a cut text says so and fits", "[text_layout]") {
  CHECK(cut_to("Large Dutch crocus", 10, TextStyle{}) == "Large Dut\u2026");
  CHECK(cut_to("\u7403\u7403\u7403", 4, TextStyle{}) == "\u7403\u2026");
  CHECK(cut_to("Large Dutch crocus", 10, {false, 80, Units::millimetres, false}) == "Large Du..");
  CHECK(cut_to("short", 10, TextStyle{}) == "short");
}

TEST_CASE("joined lines carry no trailing space", "[text_layout]") {
  CHECK(joined({"a  ", "", "b"}) == "a\n\nb\n");
}
