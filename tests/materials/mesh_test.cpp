#include "materials/mesh.hpp"

#include <catch2/catch.hpp>

#include "materials/materials_vectors.hpp"

using namespace bulbwright;

namespace {

Section disc(double width) {
  return {Shape::round, Millimetres{width}, Millimetres{width}, 0_mm};
}

}  // namespace

TEST_CASE("discs and pins agree with the worked numbers", "[mesh][published]") {
  for (const auto& v : materials_vectors("mesh_disc")) {
    REQUIRE(v.in("clearance") == mesh_clearance.value());
    CHECK(mesh_outline(disc(v.in("inner_width"))).length.value() ==
          Approx(v.expected).margin(v.tolerance));
  }
  for (const auto& v : materials_vectors("mesh_pins")) {
    CAPTURE(v.inputs);
    REQUIRE(v.in("spacing") == pin_spacing.value());
    CHECK(pins_for(mesh_outline(disc(v.in("inner_width")))) == static_cast<int>(v.expected));
  }
  // common practice: three or four pins hold the mesh of a pot of 380 mm.
  CHECK(pins_for(mesh_outline(disc(380))) == 4);
  CHECK(pins_for(mesh_outline(disc(80))) == 3);
  // A sheet of 600 x 300 mm has six spacings of 300 mm round its edge, not seven.
  CHECK(pins_for({Shape::rectangle, 600_mm, 300_mm, 0_mm}) == 6);
}

// Greatest openings: gopher 1/2 in (sure), vole and mouse 1/4 in, squirrel 1 in and 1/2 in for
// small bulbs. Sources in src/mesh.cpp.
TEST_CASE("the narrowest opening that any pest needs is taken", "[mesh][published]") {
  using Pests = std::vector<Pest>;
  CHECK(mesh_opening(Pests{Pest::squirrel}, 38_mm) == 25_mm);
  CHECK(mesh_opening(Pests{Pest::squirrel}, 29_mm) == 13_mm);
  CHECK(mesh_opening(Pests{Pest::gopher, Pest::squirrel}, 38_mm) == 25_mm);
  CHECK(mesh_beneath(Pests{Pest::gopher, Pest::squirrel}) == 13_mm);
  CHECK_FALSE(mesh_beneath(Pests{Pest::vole, Pest::deer}));
  CHECK(mesh_opening(Pests{Pest::squirrel, Pest::vole}, 38_mm) == 6_mm);
  CHECK(mesh_opening(Pests{Pest::mouse, Pest::deer}, 38_mm) == 6_mm);
  CHECK_FALSE(mesh_opening(Pests{Pest::deer}, 38_mm));
  CHECK_FALSE(mesh_opening(Pests{}, 38_mm));
}

TEST_CASE("a mesh is cut inside the rim, and only against a pest that it stops", "[mesh]") {
  using Pests = std::vector<Pest>;
  const auto vole = mesh_over_mix(disc(374), Pests{Pest::vole}, 38_mm);
  REQUIRE(vole);
  CHECK(vole->outline.length == 364_mm);
  CHECK_FALSE(mesh_over_mix(disc(374), Pests{Pest::deer}, 38_mm));
  CHECK_FALSE(mesh_over_mix(disc(374), Pests{Pest::gopher}, 38_mm));
  const auto gopher = mesh_under_mix(disc(290), Pests{Pest::gopher});
  REQUIRE(gopher);
  CHECK(gopher->outline.length == 280_mm);
  CHECK(gopher->pins == 0);
  CHECK_FALSE(mesh_under_mix(disc(290), Pests{Pest::vole}));
  for (std::size_t i = 0; i < words_of<Pest>().size(); ++i) {
    CHECK_FALSE(mesh_against(static_cast<Pest>(i)).source.empty());
  }
}
