#include "materials/used_mix.hpp"

#include <catch2/catch.hpp>

#include "catalogue/catalogue.hpp"

using namespace bulbwright;

TEST_CASE("mix that held a genus is refused for it only", "[used_mix]") {
  const Catalogue catalogue = builtin_catalogue();
  const std::vector<const Taxon*> taxa{&catalogue.at("tulip-triumph"),
                                       &catalogue.at("narcissus-large-cupped"),
                                       &catalogue.at("tulip-parrot")};
  const std::vector<std::string> tulips{"tulipa"};
  CHECK(genera_refused("tulip", true, taxa) == tulips);
  CHECK(genera_refused("Tulipa", true, taxa) == tulips);
  CHECK(genera_refused("hyacinth", true, taxa).empty());
  CHECK(genera_refused("tulip", false, taxa).empty());  // fresh mix
  CHECK(genera_refused(std::nullopt, true, taxa).empty());
}
