#include "base/error.hpp"

#include <catch2/catch.hpp>

using namespace bulbwright;

TEST_CASE("quoting stops control characters and cuts at sixty", "[error][input]") {
  CHECK(in_quotes("\x1b[31m") == "\"\\x1b[31m\"");
  CHECK(in_quotes("\xff") == "\"\\xff\"");
  CHECK(in_quotes("é") == "\"é\"");
  CHECK(in_quotes(std::string(61, 'a')) == "\"" + std::string(60, 'a') + "…\"");
  CHECK(in_quotes(std::string(60, 'a')) == "\"" + std::string(60, 'a') + "\"");
  CHECK(in_quotes("\u009b") == "\"\\u009b\"");
}

// Unicode Standard Annex 9 lists the directional formatting characters; U+2028 and U+2029 end a
// line and a paragraph.
TEST_CASE("quoting stops what turns or breaks the line", "[error][input][published]") {
  CHECK(in_quotes("a\u202eb") == "\"a\\u202eb\"");
  for (const char* control : {"\u061c", "\u2028", "\u2029", "\u202a", "\u202b", "\u202c", "\u202d",
                              "\u202e", "\u2066", "\u2067", "\u2068", "\u2069"}) {
    CAPTURE(escaped(control));
    CHECK(escaped(control).starts_with("\\u"));
    CHECK(escaped(control).size() == 6);
  }
  for (const char* plain :
       {"\u00a0", "\u00e9", "\u2026", "\u202f", "\u200e", "\u206a", "\U0001f337"}) {
    CHECK(escaped(plain) == plain);
  }
}

TEST_CASE("the name of a file is escaped but never cut", "[error][input]") {
  const std::string path = "the library garden/" + std::string(300, 'p') + ".json";
  CHECK(describe(InputError{{path, 1, 2}, "no"}) == path + ":1:2: error: no\n");
  CHECK(path_in_quotes(path + "\x1b") == "\"" + path + "\\x1b\"");
  CHECK(describe(InputError{{"a\nb", 0, 0}, "no"}) == "a\\x0ab: error: no\n");
  const std::string longest(4095, '\x07');
  CHECK(describe(InputError{{"", 0, 0}, "cannot read " + path_in_quotes(longest) + ": why"})
            .ends_with(": why\n"));
}

TEST_CASE("many faults end in a count and never pass two thousand bytes", "[error][input]") {
  std::vector<InputFault> faults(33, InputFault{{"south.json", 7, 31}, "x"});
  CHECK(describe(InputError{faults}).ends_with("… and 13 more\n"));
  for (InputFault& fault : faults) fault.message = std::string(1500, 'y');
  CHECK(describe(InputError{faults}).size() <= 2000);
  CHECK(describe(InputError{{"a.json", 0, 0}, std::string(50000, 'z')}).size() <= 20100);
}

TEST_CASE("a message that holds input raw is escaped", "[error][input]") {
  CHECK(describe(InputError{{"", 0, 0}, "--format: \x1b[31mX\xff not in {text,json}"}) ==
        "bulbwright: error: --format: \\x1b[31mX\\xff not in {text,json}\n");
}

TEST_CASE("a message starts with the place an editor can jump to", "[error]") {
  CHECK(describe(InputError{{"south.json", 7, 31}, "no"}) == "south.json:7:31: error: no\n");
  CHECK(describe(InputError{{"", 0, 0}, "no"}) == "bulbwright: error: no\n");
}
