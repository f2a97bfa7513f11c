#include "layers/planting_depth.hpp"

#include <catch2/catch.hpp>

using namespace bulbwright;

namespace {

const Catalogue& catalogue() {
  static const Catalogue known = builtin_catalogue();
  return known;
}

Pot pot_of_height(Millimetres height) {
  PotRequest request;
  request.top = LengthPair{380_mm, 380_mm, false};
  request.base = LengthPair{300_mm, 300_mm, false};
  request.height = height;
  return make_pot(request);
}

std::vector<ResolvedLayer> tulips(std::size_t layers, Use use = Use::outdoors) {
  LayerRequest layer;
  layer.parts = {{"tulip-triumph", 1.0}};
  layer.use = use;
  return resolve_layers(std::vector<LayerRequest>(layers, layer), catalogue());
}

std::vector<std::vector<int>> deeper_in(const std::vector<ResolvedLayer>& layers, const Pot& pot) {
  return deeper_than_usual_cm(layers, stack_of(layers, pot));
}

}  // namespace

TEST_CASE("a single layer lies at its usual depth, of three the lower ones deeper", "[depth]") {
  CHECK(deeper_in(tulips(1), pot_of_height(350_mm)).at(0) == std::vector<int>{0});
  const auto three = deeper_in(tulips(3), pot_of_height(350_mm));
  const Stack stack = stack_of(tulips(3), pot_of_height(350_mm));
  REQUIRE(three.size() == 3);
  CHECK(three[0][0] > three[1][0]);
  CHECK(three[1][0] > three[2][0]);
  CHECK(three[2][0] < 0);
  for (std::size_t i = 0; i < 3; ++i) {
    const double mm = stack.layers[i].depth.value() - tulips(1)[0].kinds[0].taxon->depth_mm.value;
    CHECK(std::abs(10.0 * three[i][0] - mm) <= 5.01);
  }
}

TEST_CASE("bulbs forced indoors, and a stack that does not fit, have no depth to tell", "[depth]") {
  CHECK(deeper_in(tulips(1, Use::forcing), pot_of_height(350_mm))[0][0] == 0);
  for (const auto& layer : deeper_in(tulips(3), pot_of_height(150_mm))) CHECK(layer[0] == 0);
}
