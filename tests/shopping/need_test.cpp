#include "shopping/need.hpp"

#include <catch2/catch.hpp>

using namespace bulbwright;

namespace {

ShoppingNeed need_of(const char* taxon, int layer, int need, bool own = false) {
  ShoppingNeed result;
  result.taxon = taxon;
  result.layer = layer;
  result.need = need;
  result.own = own;
  return result;
}

}  // namespace

TEST_CASE("three layers of one kind are one purchase with spares on the sum", "[shopping]") {
  std::vector<ShoppingNeed> layers{need_of("tulip-triumph", 1, 11), need_of("muscari", 2, 11),
                                   need_of("tulip-triumph", 3, 11)};
  add_spares(layers, 0.1);
  CHECK(layers[0].spares + layers[2].spares == 3);  // on 22, where 11 and 11 alone take 2 each
  CHECK(layers[1].spares == 2);
  const std::vector<ShoppingNeed> bought = needs_by_kind(layers);
  REQUIRE(bought.size() == 2);
  CHECK(bought[0].taxon == "tulip-triumph");
  CHECK(bought[0].need == 22);
  CHECK(bought[0].spares == 3);
  CHECK(bought[0].buy == 25);
  CHECK(bought[1].need == 11);
}

TEST_CASE("what the grower has, another grade and another label stay lines of their own",
          "[shopping]") {
  std::vector<ShoppingNeed> layers{need_of("muscari", 1, 9), need_of("muscari", 2, 9, true),
                                   need_of("muscari", 3, 9), need_of("muscari", 4, 9)};
  layers[2].grade = "10";
  layers[3].label = "from the shed";
  add_spares(layers, 0.1);
  for (std::size_t i = 0; i < layers.size(); ++i) CHECK(layers[i].buy == (i == 1 ? 0 : 10));
  CHECK(needs_by_kind(layers).size() == 4);
  const std::vector<ShoppingNeed> own{layers[1], layers[1]};
  REQUIRE(needs_by_kind(own).size() == 1);
  CHECK(needs_by_kind(own)[0].need == 18);
  CHECK(needs_by_kind(own)[0].buy == 0);
}
