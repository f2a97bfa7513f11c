#include "materials/used_mix.hpp"

#include <catch2/catch.hpp>

using namespace bulbwright;

TEST_CASE("a crop is known by its English and its botanical name", "[used_mix]") {
  for (const char* word : {"hyacinth", "Hyacinths", "HYACINTHUS", " hyacinth "})
    CHECK(genus_of_crop(word) == "hyacinthus");
  CHECK(genus_of_crop("daffodils") == "narcissus");
  CHECK(genus_of_crop("grape-hyacinth") == "muscari");
  CHECK(genus_of_crop("fritillaries") == "fritillaria");
  CHECK(genus_of_crop("crocus") == "crocus");
  CHECK(genus_of_crop("iris") == "iris");
  CHECK(genus_of_crop("tomato") == "tomato");
  CHECK(genus_of_crop("").empty());
}

TEST_CASE("mix that held a genus is refused for it only", "[used_mix]") {
  const std::vector<std::string> genera{"Tulipa", "Narcissus", "Tulipa"};
  CHECK(genera_refused("tulip", true, genera) == std::vector<std::string>{"tulipa"});
  CHECK(genera_refused("hyacinth", true, genera).empty());
  CHECK(genera_refused("tulip", false, genera).empty());  // fresh mix
  CHECK(genera_refused(std::nullopt, true, genera).empty());
}
