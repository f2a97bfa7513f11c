#include "cli/variants.hpp"

#include <catch2/catch.hpp>

#include "base/error.hpp"

using bulbwright::InvalidValue;
using bulbwright::cli::PotOptions;
using bulbwright::cli::Variant;
using bulbwright::cli::variants_of;

TEST_CASE("days, flags and stacks are variants of what is asked", "[variants]") {
  PotOptions base;
  base.plant = "2027-01-08";
  base.layers = {"tulip-triumph"};
  const std::vector<Variant> variants = variants_of(
      {"2026-12-25,01-25", "near=38.5,-121.4", "layer=muscari; layer=crocus-large; spread"}, base);
  REQUIRE(variants.size() == 4);
  CHECK(variants[0].pot.plant == "2026-12-25");
  CHECK(variants[1].pot.plant == "01-25");
  CHECK(variants[1].pot.layers == base.layers);
  CHECK(variants[2].pot.near == "38.5,-121.4");
  CHECK(variants[2].pot.plant == base.plant);
  CHECK(variants[3].pot.layers == std::vector<std::string>{"muscari", "crocus-large"});
  CHECK(variants[3].pot.spread);
  CHECK(variants[3].label == "layer=muscari; layer=crocus-large; spread");
}

TEST_CASE("a variant that says nothing, or an unknown flag, is refused", "[variants][input]") {
  CHECK_THROWS_AS(variants_of({"2026-12-25,,2027-01-25"}, {}), InvalidValue);
  CHECK_THROWS_WITH(variants_of({"sitte=London"}, {}),
                    Catch::Contains("\"sitte\"") && Catch::Contains("did you mean \"site\""));
}
