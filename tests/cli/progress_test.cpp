#include "cli/progress.hpp"

#include <catch2/catch.hpp>

using bulbwright::cli::Progress;

TEST_CASE("progress tells seconds, and of many things which one", "[progress]") {
  Progress progress;
  CHECK(progress.text(2) == "bulbwright: 2 s");
  progress.begin("pot", 40);
  CHECK(progress.text(3) == "bulbwright: 3 s, pot 1 of 40");
  for (int i = 0; i < 11; ++i) progress.next();
  CHECK(progress.text(4) == "bulbwright: 4 s, pot 12 of 40");
  for (int i = 0; i < 29; ++i) progress.next();
  CHECK(progress.text(5) == "bulbwright: 5 s, pot 40 of 40");
}
