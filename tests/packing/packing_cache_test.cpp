#include <catch2/catch.hpp>

#include "packing/packing.hpp"

using namespace bulbwright;

TEST_CASE("a remembered packing is the packing, and another question is another answer",
          "[packing_cache]") {
  const Section section{Shape::round, 300_mm, 300_mm, 0_mm};
  const std::vector<PackKind> tulips{{38_mm, 1.0, 12}};
  PackingCache cache;
  const Packing& most = cache.most(section, tulips, 25_mm, 10_mm, Effort::quick, Arrange::mixed);
  CHECK(&most == &cache.most(section, tulips, 25_mm, 10_mm, Effort::quick, Arrange::mixed));
  CHECK(most.bulbs.size() == pack_most(section, tulips, 25_mm, 10_mm, Effort::quick).bulbs.size());
  CHECK(cache.count(section, tulips, 3_mm, 10_mm, Effort::quick, Arrange::mixed).bulbs.size() ==
        12);
  CHECK(cache.most(section, tulips, 10_mm, 10_mm, Effort::quick, Arrange::mixed).bulbs.size() >
        most.bulbs.size());
}
