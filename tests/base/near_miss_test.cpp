#include "base/near_miss.hpp"

#include <array>

#include <catch2/catch.hpp>

using namespace bulbwright;

TEST_CASE("one swap of neighbours is one step", "[near_miss]") {
  CHECK(edit_distance("tulip", "tulpi") == 1);
  CHECK(edit_distance("", "abc") == 3);
  CHECK(edit_distance("kitten", "sitting") == 3);  // the textbook pair, Levenshtein
  CHECK(edit_distance("ca", "abc") == 3);          // optimal string alignment, not Damerau's 2
}

TEST_CASE("the near name is offered and a far one is not", "[near_miss]") {
  constexpr std::array<std::string_view, 3> known{"headspace", "height", "thickness"};
  CHECK(did_you_mean("headspase", known) == R"(; did you mean "headspace"?)");
  CHECK(did_you_mean("zzzz", known).empty());
}
