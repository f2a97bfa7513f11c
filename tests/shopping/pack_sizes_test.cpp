#include "shopping/pack_sizes.hpp"

#include <numeric>

#include <catch2/catch.hpp>

#include "base/error.hpp"
#include "catalogue/catalogue.hpp"
#include "shopping/pieces.hpp"

using namespace bulbwright;
using fixture::pieces_in;

namespace {

int packs_in(const std::vector<Pack>& packs) {
  return std::accumulate(packs.begin(), packs.end(), 0,
                         [](int sum, const Pack& pack) { return sum + pack.count; });
}

/// Least surplus, then fewest packs, by trying every combination.
struct Best {
  int pieces = 1 << 30;
  int packs = 1 << 30;
};
void try_all(int need, std::span<const int> sizes, int pieces, int packs, Best& best) {
  if (pieces >= need) {
    if (std::pair{pieces, packs} < std::pair{best.pieces, best.packs}) best = {pieces, packs};
    return;
  }
  if (sizes.empty()) return;
  for (int n = 0; pieces + (n - 1) * sizes[0] < need; ++n) {
    try_all(need, sizes.subspan(1), pieces + n * sizes[0], packs + n, best);
  }
}

}  // namespace

// The coin problem with 6, 9 and 20: 43 is the largest number that cannot be made. Source:
// Weisstein, "McNugget Number", MathWorld; E. W. Weisstein cites Vardi, "Computational Recreations
// in Mathematica", 1991.
TEST_CASE("packs of 6, 9 and 20 cannot make 43, and make everything above", "[pack][published]") {
  const int sizes[] = {6, 9, 20};
  CHECK(pieces_in(fewest_packs(43, sizes)) == 44);
  for (int need = 44; need < 300; ++need) CHECK(pieces_in(fewest_packs(need, sizes)) == need);
  int impossible = 0;
  for (int need = 1; need <= 43; ++need) impossible += pieces_in(fewest_packs(need, sizes)) != need;
  CHECK(impossible == 22);  // 1-5, 7, 8, 10, 11, 13, 14, 16, 17, 19, 22, 23, 25, 28, 31, 34, 37, 43
}

TEST_CASE("no combination has fewer surplus pieces, nor as few with fewer packs",
          "[pack][oracle]") {
  const std::vector<std::vector<int>> tables = {
      {10, 25, 50, 100}, {1, 3, 5, 10, 25}, {3, 5, 10, 25}, {5, 10, 25, 50}, {7}, {6, 10, 15}};
  for (const std::vector<int>& sizes : tables) {
    for (int need = 1; need <= 120; ++need) {
      CAPTURE(sizes, need);
      const std::vector<Pack> packs = fewest_packs(need, sizes);
      Best best;
      try_all(need, sizes, 0, 0, best);
      CHECK(pieces_in(packs) == best.pieces);
      CHECK(packs_in(packs) == best.packs);
    }
  }
}

TEST_CASE("needs past the table of totals are covered as well as those within it", "[pack][law]") {
  const int sizes[] = {10, 25, 50, 100};
  // With 100 as the largest size the answer for need + 100 is that for need and one pack of 100.
  for (int need = 9'000; need < 12'000; need += 7) {
    CAPTURE(need);
    const std::vector<Pack> packs = fewest_packs(need, sizes),
                            more = fewest_packs(need + 100, sizes);
    CHECK(pieces_in(more) == pieces_in(packs) + 100);
    CHECK(packs_in(more) == packs_in(packs) + 1);
  }
  // 10,000,003: two over, as 25 makes every multiple of 5 from 40 on.
  CHECK(fewest_packs(10'000'003, sizes) ==
        std::vector<Pack>{{100, 99'999}, {50, 1}, {25, 1}, {10, 3}});
}

TEST_CASE("packs come largest first, and none for nothing", "[pack]") {
  const int sizes[] = {5, 50, 10, 25, 10};
  CHECK(fewest_packs(83, sizes) == std::vector<Pack>{{50, 1}, {25, 1}, {10, 1}});
  CHECK(fewest_packs(29, sizes) == std::vector<Pack>{{25, 1}, {5, 1}});
  CHECK(fewest_packs(0, sizes).empty());
  CHECK(fewest_packs(-3, sizes).empty());
}

TEST_CASE("every taxon is sold in some size", "[pack][law]") {
  const std::vector<PackSizes> table = builtin_packs();
  const Catalogue catalogue = builtin_catalogue();
  for (const Taxon& taxon : catalogue.taxa()) {
    CHECK_FALSE(sizes_for(table, ItemKind::bulb, taxon.id, taxon.genus).empty());
  }
  CHECK(sizes_for(table, ItemKind::bulb, "allium-large", "Allium")[0] == 1);
  CHECK(sizes_for(table, ItemKind::bulb, "tulip-triumph", "Tulipa")[0] == 10);
  CHECK(sizes_for(table, ItemKind::bulb, "new-kind", "Newgenus")[0] == 5);
  CHECK(sizes_for(table, ItemKind::mesh, "", "").empty());
}

TEST_CASE("a table of packs is checked", "[pack][input]") {
  const std::string head = "kind,match,sizes,origin,source\n";
  const auto fault = [&](const std::string& rows) -> std::string {
    try {
      parse_packs(head + rows, "packs.csv");
    } catch (const InputError& error) {
      return describe(error);
    }
    return "no fault";
  };
  CHECK(fault("bulb,*,10 25,common practice,\n") == "no fault");
  CHECK(
      fault("blub,*,10,common practice,\n") ==
      "packs.csv:2:1: error: kind is \"blub\"; expected bulb, mix, amendment, mesh, pin or label; "
      "did you mean \"bulb\"?\n");
  CHECK(fault("mesh,*,10,common practice,\n") ==
        "packs.csv:2:1: error: kind is mesh, which is cut to size\n");
  CHECK(fault("bulb,*,10,guessed,\n").starts_with("packs.csv:2:11: error: origin is \"guessed\""));
  CHECK(fault("bulb,*,10 x,common practice,\n").starts_with("packs.csv:2:8: error: sizes has "));
  CHECK(fault("bulb,*,10  25,common practice,\n").starts_with("packs.csv:2:8: error: sizes has "));
  CHECK(fault("bulb,*,0,common practice,\n").starts_with("packs.csv:2:8: error: sizes has "));
  CHECK(fault("bulb,,5,common practice,\n").find("match is empty") != std::string::npos);
  CHECK(fault("bulb,a,5,common practice,\nbulb,a,6,common practice,\n") ==
        "packs.csv:3:6: error: match \"a\" was given before for bulb\n");
}
