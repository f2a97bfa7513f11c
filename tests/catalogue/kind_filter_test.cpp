#include "catalogue/kind_filter.hpp"

#include <catch2/catch.hpp>

#include "catalogue/catalogue.hpp"

using namespace bulbwright;

TEST_CASE("each wish picks the kinds of which it is true, and all must be", "[catalogue][filter]") {
  const Catalogue catalogue = builtin_catalogue();
  CHECK(KindFilter{}.is_open());
  KindFilter none, spared, eaten, low, both;
  none.cold = ColdWish::none;
  spared.not_eaten_by = {Pest::deer};
  eaten.eaten_by = {Pest::deer};
  low.most_height = 300_mm;
  both.cold = ColdWish::none;
  both.most_height = 300_mm;
  both.not_eaten_by = {Pest::deer};
  CHECK_FALSE(low.is_open());
  for (const Taxon& taxon : catalogue.taxa()) {
    CAPTURE(taxon.id);
    CHECK(passes(taxon, {}));
    CHECK(passes(taxon, none) == (taxon.outdoor_cold_weeks.low == 0.0));
    CHECK(passes(taxon, spared) == (taxon.deer == Eaten::rarely));
    CHECK(passes(taxon, eaten) ==
          (taxon.deer == Eaten::eaten || taxon.deer == Eaten::occasionally));
    CHECK(passes(taxon, low) == (taxon.height_cm.value <= 30.0));
    CHECK(passes(taxon, both) ==
          (passes(taxon, none) && passes(taxon, low) && passes(taxon, spared)));
  }
  // Common practice: freesias and paperwhites are never chilled, tulips are.
  CHECK(passes(catalogue.at("freesia"), none));
  CHECK(passes(catalogue.at("narcissus-tazetta-tender"), none));
  CHECK_FALSE(passes(catalogue.at("tulip-triumph"), none));
}

TEST_CASE("heights are bounded at both ends", "[catalogue][filter]") {
  const Catalogue catalogue = builtin_catalogue();
  const Taxon& tulip = catalogue.at("tulip-triumph");
  KindFilter filter;
  filter.least_height = Millimetres{10.0 * tulip.height_cm.value};
  filter.most_height = filter.least_height;
  CHECK(passes(tulip, filter));
  filter.least_height = *filter.least_height + 1_mm;
  filter.most_height.reset();
  CHECK_FALSE(passes(tulip, filter));
}
