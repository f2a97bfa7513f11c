#include "layers/layering.hpp"

#include <catch2/catch.hpp>

#include "report/notice_text.hpp"

using namespace bulbwright;

namespace {

const Catalogue& catalogue() {
  static const Catalogue known = builtin_catalogue();
  return known;
}

Pot round_pot(Millimetres top, Millimetres base, Millimetres height) {
  PotRequest request;
  request.top = LengthPair{top, top, false};
  request.base = LengthPair{base, base, false};
  request.height = height;
  return make_pot(request);
}

LayerRequest layer_of(const std::string& taxon) {
  LayerRequest layer;
  layer.parts = {{taxon, 1.0}};
  return layer;
}

Layering planned(const std::vector<LayerRequest>& layers, const Pot& pot) {
  PackingCache cache;
  return plan_layers(resolve_layers(layers, catalogue()), pot, Effort::quick, cache);
}

}  // namespace

// Common practice: a layered pot of about 15 in holds tulips, daffodils and crocuses with at least
// 2 in of mix beneath, tulips lowest.
TEST_CASE("three layers fit a 380 by 360 mm pot with more than 50 mm of mix beneath",
          "[layering]") {
  const Layering result = planned(
      {layer_of("tulip-triumph"), layer_of("narcissus-large-cupped"), layer_of("crocus-large")},
      round_pot(380_mm, 290_mm, 360_mm));
  REQUIRE(result.ok);
  REQUIRE(result.layers.size() == 3);
  CHECK(result.layers[0].above_floor > 50_mm);
  for (std::size_t i = 0; i < 3; ++i) {
    const PlannedLayer& layer = result.layers[i];
    CAPTURE(i);
    CHECK(layer.below_rim.value() == Approx(layer.depth.value() + 25.0));
    CHECK(layer.count <= layer.upper_bound);
    if (i > 0) CHECK(layer.below_rim < result.layers[i - 1].below_rim);
  }
}

// Common practice: a pot of about 15 in takes 12 to 15 tulips in a layer, about an inch between
// them.
TEST_CASE("a 15 in pot takes at least the 15 tulips that growers set in a layer", "[layering]") {
  LayerRequest tulips = layer_of("tulip-triumph");
  tulips.gap = 25.4_mm;
  const Pot pot = round_pot(381_mm, 304.8_mm, 355.6_mm);
  const Layering most = planned({tulips}, pot);
  REQUIRE(most.ok);
  CHECK(most.layers[0].count >= 15);
  tulips.gap.reset();
  tulips.count = 15;
  const Layering own = planned({tulips}, pot);
  REQUIRE(own.ok);
  CHECK(own.layers[0].count == 15);
  CHECK(own.layers[0].gap > 25.4_mm);
  CHECK(own.layers[0].least_gap >= own.layers[0].gap);
}

// Iowa State University Extension, Horticulture and Home Pest News, 14 Sep 2011 (bulbs per 6 in
// pot, in the catalogue as bulbs_per_15cm_pot): a pot of 152 mm inner width with the forcing gap of
// 3 mm and the bulbs nearly at the wall. Kinds that the trade crowds or thins out for other reasons
// than their bulbs' width (leafy tops, thin corms set in fistfuls) differ, so the check is on most
// of them.
TEST_CASE("the forcing gap gives the trade's bulbs in a 15 cm pot", "[layering][published]") {
  int kinds = 0, within = 0;
  for (const Taxon& taxon : catalogue().taxa()) {
    if (!taxon.per_15cm_pot) continue;
    const PackKind kind{diameter_of_circumference(taxon.circumference_cm.value), 1.0, 0};
    const Section section{Shape::round, 145_mm, 145_mm, 0_mm};
    const auto count = static_cast<double>(
        pack_most(section, std::span{&kind, 1}, forcing_gap, 3_mm, Effort::quick).bulbs.size());
    ++kinds;
    if (count >= 0.8 * taxon.per_15cm_pot->low && count <= 1.5 * taxon.per_15cm_pot->high) ++within;
    UNSCOPED_INFO(taxon.id << ": " << count << " against " << taxon.per_15cm_pot->low << " to "
                           << taxon.per_15cm_pot->high);
  }
  REQUIRE(kinds >= 20);
  CHECK(within >= kinds * 6 / 10);
}

TEST_CASE("a shallow pot names the height that would do and the layer to leave out", "[layering]") {
  const std::vector<LayerRequest> layers{
      layer_of("tulip-triumph"), layer_of("narcissus-large-cupped"), layer_of("crocus-large")};
  const Layering shallow = planned(layers, round_pot(380_mm, 290_mm, 200_mm));
  REQUIRE_FALSE(shallow.ok);
  REQUIRE(shallow.notices.size() == 1);
  CHECK(shallow.notices[0].code == NoticeCode::too_shallow);
  const std::string text = report::plain_text(shallow.notices[0]);
  CHECK_THAT(text, Catch::Contains("would do") && Catch::Contains("leave out"));
}

TEST_CASE("own bulbs are shared out over a mixture by its shares", "[layering]") {
  LayerRequest mix;
  mix.parts = {{"narcissus-jonquilla", 2.0}, {"muscari", 1.0}};
  mix.count = 20;
  const Layering result = planned({mix}, round_pot(380_mm, 290_mm, 360_mm));
  REQUIRE(result.ok);
  REQUIRE(result.layers[0].bulbs.size() == 2);
  CHECK(result.layers[0].bulbs[0].count == 13);
  CHECK(result.layers[0].bulbs[1].count == 7);
}

TEST_CASE("bulbs that cannot stand 3 mm apart are refused", "[layering]") {
  LayerRequest tulips = layer_of("tulip-triumph");
  tulips.count = 500;
  const Layering result = planned({tulips}, round_pot(380_mm, 290_mm, 360_mm));
  CHECK_FALSE(result.ok);
  CHECK(result.notices[0].code == NoticeCode::does_not_fit);
}

// Common practice: an inch between bulbs in layered pots, a finger (18 mm) in a single layer; a
// plant with a wide top keeps its own distance.
TEST_CASE("the usual gap is an inch in layers and a finger in one", "[layering]") {
  CHECK(usual_gap(*catalogue().find("tulip-triumph"), false) == 25_mm);
  CHECK(usual_gap(*catalogue().find("tulip-triumph"), true) == 18_mm);
  CHECK(usual_gap(*catalogue().find("fritillaria-imperialis"), true) > 100_mm);
}

// Nebraska Extension in Lancaster County (Lincoln Journal Star, 3 October 2020), for a six inch
// pot: six tulips, four to six daffodils, three hyacinths, the top half inch of each bulb exposed.
TEST_CASE("a pot forced indoors holds what the trade sets in it, tips out of the mix",
          "[layering][published]") {
  struct Published {
    const char* taxon;
    int least, most;
  };
  for (const Published& row :
       {Published{"tulip-triumph", 6, 7}, Published{"narcissus-large-cupped", 4, 6},
        Published{"hyacinth", 3, 4}}) {
    LayerRequest layer = layer_of(row.taxon);
    layer.use = Use::forcing;
    const Layering result = planned({layer}, round_pot(152_mm, 127_mm, 127_mm));
    INFO(row.taxon);
    REQUIRE(result.ok);
    CHECK(result.layers[0].count >= row.least);
    CHECK(result.layers[0].count <= row.most);
    CHECK(result.layers[0].cover == 0_mm - 13_mm);
    CHECK(result.layers[0].above_floor >= forcing_floor_margin);
  }
  LayerRequest crocus = layer_of("crocus-large");
  crocus.use = Use::forcing;
  CHECK(planned({crocus}, round_pot(152_mm, 127_mm, 127_mm)).layers[0].cover == 13_mm);
}

TEST_CASE("a window box too shallow for two layers is offered one mixed layer", "[layering]") {
  const Pot box = round_pot(600_mm, 560_mm, 150_mm);
  const std::vector<LayerRequest> layers{layer_of("narcissus-miniature"), layer_of("muscari")};
  const Layering refused = planned(layers, box);
  REQUIRE_FALSE(refused.ok);
  CHECK(refused.notices[0].kinds.size() == 2);
  CHECK_THAT(report::plain_text(refused.notices[0]), Catch::Contains("mixed in one layer"));
  LayerRequest mix;
  mix.parts = {{"narcissus-miniature", 1.0}, {"muscari", 1.0}};
  CHECK(planned({mix}, box).ok);
  // Where a mixture does not fit either, none is offered.
  const Layering too_low = planned(layers, round_pot(600_mm, 560_mm, 80_mm));
  CHECK(too_low.notices[0].kinds.empty());
}
