#include "materials/bulb_volume.hpp"

#include <catch2/catch.hpp>

#include "catalogue/genera.hpp"
#include "catalogue/taxon.hpp"
#include "materials/materials_vectors.hpp"

using namespace bulbwright;

TEST_CASE("a bulb's sphere follows from its girth", "[bulb_volume][published]") {
  for (const auto& v : materials_vectors("bulb_sphere")) {
    CAPTURE(v.inputs, v.quantity);
    const double girth = v.in("circumference_cm");
    const double got = v.quantity == "volume" ? sphere_volume(girth).value() * 1000.0
                                              : diameter_of_circumference(girth).value();
    CHECK(got == Approx(v.expected).margin(v.tolerance));
  }
}

TEST_CASE("mass of bulbs agrees with the worked estimates", "[bulb_volume][published]") {
  for (const auto& v : materials_vectors("bulb_estimate")) {
    CAPTURE(v.inputs, v.quantity);
    const Litres bulb = bulb_volume(v.in("girth_cm"), v.in("shape"));
    REQUIRE(v.quantity == "mass");
    CHECK(bulb_mass(bulb).value() * 1000.0 == Approx(v.expected).margin(v.tolerance));
  }
}

// The shape factor that each worked estimate used, by the kind it names (common practice).
TEST_CASE("shape factors are those of the worked estimates", "[bulb_volume]") {
  for (const auto& v : materials_vectors("bulb_estimate")) {
    CAPTURE(v.inputs);
    const std::string kind = v.inputs.substr(0, v.inputs.find(' '));
    const std::string genus = kind == "tulip" ? "Tulipa" : kind == "hyacinth" ? "Hyacinthus" : kind;
    CHECK(shape_factor(builtin_genera().of(genus).shape_factor, 99.0) == v.in("shape"));
  }
  CHECK(shape_factor(builtin_genera().of("Scilla").shape_factor, 1.1) == Approx(0.902));
}
