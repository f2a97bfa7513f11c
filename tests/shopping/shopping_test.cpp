#include "shopping/shopping.hpp"

#include <algorithm>

#include <catch2/catch.hpp>

#include "shopping/pieces.hpp"

using namespace bulbwright;
using fixture::pieces_in;

namespace {

BulbNeed bulbs(std::string taxon, std::string genus, int layer, int count) {
  BulbNeed need;
  need.taxon = std::move(taxon);
  need.genus = std::move(genus);
  need.name = "name of " + need.taxon;
  need.grade = "10/14";
  need.layer = layer;
  need.count = count;
  return need;
}

PotNeeds south_steps() {
  PotNeeds pot;
  pot.pot = "south steps";
  pot.layers = 2;
  pot.bulbs = {bulbs("tulip-triumph", "Tulipa", 1, 14), bulbs("crocus-large", "Crocus", 2, 27)};
  pot.mix = Litres{24.04};
  pot.perlite = Litres{8.0};
  pot.mesh = pot.mesh_width = Millimetres{370.0};
  pot.mesh_opening = Millimetres{13.0};
  pot.pins = 8;
  pot.labels = 2;
  return pot;
}

PotNeeds north_door() {
  PotNeeds pot;
  pot.pot = "north door";
  pot.layers = 1;
  pot.bulbs = {bulbs("tulip-triumph", "Tulipa", 1, 7)};
  pot.mix = Litres{10.0};
  pot.labels = 1;
  return pot;
}

const ShoppingItem& item(const ShoppingList& list, std::string_view name) {
  const auto found = std::find_if(list.items.begin(), list.items.end(),
                                  [&](const ShoppingItem& i) { return i.item == name; });
  REQUIRE(found != list.items.end());
  return *found;
}

}  // namespace

TEST_CASE("bulbs of one kind are summed over the pots and shown for each", "[shopping]") {
  const ShoppingList list = shopping_list({south_steps(), north_door()}, builtin_packs());
  const ShoppingItem& tulips = item(list, "tulip-triumph");
  CHECK(tulips.need == 21);
  CHECK(tulips.spares == 3);
  CHECK(tulips.buy == 24);
  CHECK(tulips.loss_rate == 0.10);
  CHECK(tulips.loss_origin == "flat rate");
  CHECK(tulips.packs == std::vector<Pack>{{25, 1}});
  REQUIRE(tulips.shares.size() == 2);
  CHECK(tulips.shares[0].pot == 0);
  CHECK(tulips.shares[0].need == 14);
  CHECK(tulips.shares[1].pot == 1);
  CHECK(tulips.shares[1].layer == 1);
  CHECK(item(list, "crocus-large").buy == 30);
  CHECK(item(list, "crocus-large").packs == std::vector<Pack>{{10, 3}});
}

TEST_CASE("mix, perlite, mesh, pins and labels follow the pots", "[shopping]") {
  const ShoppingList list = shopping_list({south_steps(), north_door()}, builtin_packs());
  std::vector<std::string> kinds;
  for (const ShoppingItem& i : list.items) kinds.emplace_back(word_of(i.kind));
  CHECK(kinds ==
        std::vector<std::string>{"bulb", "bulb", "mix", "amendment", "mesh", "pin", "label"});
  CHECK(item(list, "potting mix").need == Approx(34.0).margin(1e-9));
  CHECK(item(list, "potting mix").buy == 34);
  CHECK(item(list, "potting mix").packs == std::vector<Pack>{{40, 1}});
  CHECK(item(list, "perlite").buy == 8);
  CHECK(item(list, "wire mesh 370 mm, openings at most 13 mm").buy == 1);
  CHECK(item(list, "mesh pins").packs == std::vector<Pack>{{10, 1}});
  CHECK(item(list, "plant labels").need == 3);
  CHECK_FALSE(item(list, "plant labels").loss_rate);
  CHECK(item(list, "mesh pins").shares.size() == 1);
}

TEST_CASE("grade and label keep bulbs apart", "[shopping]") {
  PotNeeds a = south_steps(), b = north_door();
  a.bulbs[0].grade = "12";
  b.bulbs[0].label = "back row";
  const ShoppingList list = shopping_list({a, b}, builtin_packs());
  std::vector<std::string> names;
  for (const ShoppingItem& i : list.items) {
    if (i.kind == ItemKind::bulb) names.push_back(i.item + "/" + i.grade + "/" + i.label);
  }
  CHECK(names == std::vector<std::string>{"crocus-large/10/14/", "tulip-triumph/10/14/back row",
                                          "tulip-triumph/12/"});
}

TEST_CASE("own bulbs are counted, not bought", "[shopping]") {
  PotNeeds a = south_steps(), b = north_door();
  a.bulbs[0].own = true;
  const ShoppingList list = shopping_list({a, b}, builtin_packs());
  const ShoppingItem& tulips = item(list, "tulip-triumph");
  CHECK(tulips.need == 21);
  CHECK(tulips.own == 14);
  CHECK(tulips.spares == 1);
  CHECK(tulips.buy == 8);
  b.bulbs[0].own = true;
  const ShoppingList none = shopping_list({a, b}, builtin_packs());
  CHECK(item(none, "tulip-triumph").buy == 0);
  CHECK(item(none, "tulip-triumph").packs.empty());
}

TEST_CASE("nothing is bought for a pot that cannot be", "[shopping]") {
  PotNeeds a = south_steps(), b = north_door();
  a.ok = false;
  a.reason = Notice{NoticeCode::too_shallow, Severity::refusal};
  const ShoppingList list = shopping_list({a, b}, builtin_packs());
  CHECK(item(list, "tulip-triumph").need == 7);
  CHECK(list.items.size() == 3);
  CHECK(list.pots.size() == 2);
}

TEST_CASE("what is bought covers need and spares, whatever the order of the pots",
          "[shopping][law]") {
  const std::vector<PackSizes> packs = builtin_packs();
  for (int count = 1; count <= 300; ++count) {
    PotNeeds a = south_steps(), b = north_door();
    a.bulbs[0].count = count;
    const ShoppingList there = shopping_list({a, b}, packs), back = shopping_list({b, a}, packs);
    REQUIRE(there.items.size() == back.items.size());
    for (std::size_t i = 0; i < there.items.size(); ++i) {
      const ShoppingItem& item = there.items[i];
      CHECK(item.item == back.items[i].item);
      CHECK(item.buy == back.items[i].buy);
      CHECK(item.packs == back.items[i].packs);
      CHECK(item.buy >= item.need - item.own);
      if (!item.packs.empty()) CHECK(pieces_in(item.packs) >= item.buy);
      if (item.kind == ItemKind::bulb) CHECK(item.buy == item.need - item.own + item.spares);
      double shared = 0.0;
      for (const auto& share : item.shares) shared += share.need;
      CHECK(shared == Approx(item.need).margin(1e-9));
    }
  }
}

TEST_CASE("a flat rate is rounded up, and never by the last bit", "[shopping][law]") {
  CHECK(flat_spares(0, 0.1) == 0);
  CHECK(flat_spares(1, 0.1) == 1);
  CHECK(flat_spares(11, 0.1) == 2);
  for (int tens = 1; tens <= 1000; ++tens) CHECK(flat_spares(10 * tens, 0.1) == tens);
  for (int count = 0; count <= 3000; ++count) CHECK(flat_spares(count, 0.1) == (count + 9) / 10);
}

TEST_CASE("a trough's mesh is named by both its sides", "[shopping]") {
  PotNeeds trough;
  trough.mesh = Millimetres{590.0};
  trough.mesh_width = Millimetres{190.0};
  trough.mesh_opening = Millimetres{13.0};
  PotNeeds wider = trough;
  wider.mesh_width = Millimetres{290.0};
  const ShoppingList list = shopping_list({trough, wider, trough}, builtin_packs());
  CHECK(item(list, "wire mesh 590 x 190 mm, openings at most 13 mm").buy == 2);
  CHECK(item(list, "wire mesh 590 x 290 mm, openings at most 13 mm").buy == 1);
}
