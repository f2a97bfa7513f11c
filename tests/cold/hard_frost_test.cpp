#include "cold/hard_frost.hpp"

#include <catch2/catch.hpp>

#include "catalogue/catalogue.hpp"

using namespace bulbwright;

// A. Sakai, "The frost-hardiness of bulbs and tubers", J. Japan. Soc. Hort. Sci. 29(3), 1960,
// 233-238 (abstract): lowest temperature survived for 24 hours.
TEST_CASE("bulbs stand the frost that they were seen to stand", "[frost][published]") {
  const Catalogue catalogue = builtin_catalogue();
  struct Seen {
    const char* taxon;
    double survived_c, died_c;
  };
  for (const Seen& seen : {Seen{"muscari", -15.0, -19.0},
                           {"narcissus-poeticus", -10.0, -13.0},
                           {"tulip-triumph", -10.0, -13.0},
                           {"crocus-large", -10.0, -13.0},
                           {"hyacinth", -7.0, -9.0},
                           {"narcissus-trumpet", -7.0, -9.0},
                           {"iris-hollandica", -7.0, -9.0},
                           {"ixia", -7.0, -9.0},
                           {"freesia", -3.0, -5.0}}) {
    const Taxon& taxon = catalogue.at(seen.taxon);
    INFO(seen.taxon);
    CHECK(frost_harm(taxon, Celsius{seen.survived_c}) == FrostHarm::none);
    CHECK(frost_harm(taxon, Celsius{seen.died_c}) ==
          (taxon.hardiness_min_zone >= 8 ? FrostHarm::dies : FrostHarm::hurt));
  }
}

// Daffnet, 2008: tazettas do not survive frozen ground in Minnesota; GardenWeb, New York City, zone
// 6b: a week of minima in the 20s F kills freesia, anemone and ranunculus.
TEST_CASE("kinds of mild winters die where the ground freezes hard", "[frost][published]") {
  const Catalogue catalogue = builtin_catalogue();
  const PlaceCatalogue places = PlaceCatalogue::builtin();
  const auto harm = [&](const char* taxon, const char* place) {
    return frost_harm(catalogue.at(taxon),
                      lowest_in_frost(frost_climate(places.find(place)), pot_thermal(example_pot()),
                                      Exposure::open));
  };
  for (const char* taxon : {"narcissus-tazetta-tender", "freesia", "ranunculus", "sparaxis"}) {
    INFO(taxon);
    CHECK(harm(taxon, "Saint Paul, M") == FrostHarm::dies);
    CHECK(harm(taxon, "Chicago, I") == FrostHarm::dies);
    CHECK(harm(taxon, "Los Angeles") == FrostHarm::none);
  }
  CHECK(harm("freesia", "New York") == FrostHarm::dies);
}
