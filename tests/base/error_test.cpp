#include "base/error.hpp"

#include <catch2/catch.hpp>

using namespace bulbwright;

TEST_CASE("quoting stops control characters and cuts at sixty", "[error][input]") {
  CHECK(in_quotes("\x1b[31m") == "\"\\x1b[31m\"");
  CHECK(in_quotes("\xff") == "\"\\xff\"");
  CHECK(in_quotes("é") == "\"é\"");
  CHECK(in_quotes(std::string(61, 'a')) == "\"" + std::string(60, 'a') + "…\"");
}

TEST_CASE("many faults end in a count and never pass two thousand bytes", "[error][input]") {
  std::vector<InputFault> faults(33, InputFault{{"south.json", 7, 31}, "x"});
  CHECK(describe(InputError{faults}).ends_with("… and 13 more\n"));
  for (InputFault& fault : faults) fault.message = std::string(1500, 'y');
  CHECK(describe(InputError{faults}).size() <= 2000);
  CHECK(describe(InputError{{"a.json", 0, 0}, std::string(5000, 'z')}).size() <= 2000);
}

TEST_CASE("a message starts with the place an editor can jump to", "[error]") {
  CHECK(describe(InputError{{"south.json", 7, 31}, "no"}) == "south.json:7:31: error: no\n");
  CHECK(describe(InputError{{"", 0, 0}, "no"}) == "bulbwright: error: no\n");
}
