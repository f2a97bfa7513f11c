// Prints what pots, stacks and materials cost, in user time per call.
#include <chrono>
#include <cstdio>
#include <ctime>
#include <string>
#include <vector>

#include "layers/stack.hpp"
#include "materials/materials.hpp"
#include "pot/pot.hpp"

using namespace bulbwright;

namespace {

double sink = 0.0;

template <class Work>
void measure(const char* what, int calls, Work work) {
  const std::clock_t start = std::clock();
  for (int i = 0; i < calls; ++i) sink += work(i);
  const double seconds = static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
  std::printf("%-44s %9.0f ns\n", what, seconds / calls * 1e9);
}

PotRequest example() {
  PotRequest request;
  request.top = LengthPair{380_mm, 380_mm, false};
  request.base = LengthPair{290_mm, 290_mm, false};
  request.height = 360_mm;
  request.material = "terracotta";
  return request;
}

StackRequest stack_of(std::size_t layers) {
  StackRequest request;
  request.mix_surface = Millimetres{335.0 * static_cast<double>(layers) / 3.0};
  for (std::size_t i = 0; i < layers; ++i) {
    const double depth = 60.0 + 60.0 * static_cast<double>(layers - i);
    request.layers.push_back(
        {Millimetres{40.0}, Millimetres{depth}, Millimetres{50.0}, Millimetres{depth + 200.0}});
  }
  return request;
}

}  // namespace

int main() {
  const PotRequest request = example();
  const Pot pot = make_pot(request);
  PotRequest urn_request;
  for (int i = 0; i < 12; ++i) {
    const Millimetres width{300.0 + 20.0 * ((i * 7) % 5)};
    urn_request.profile.push_back({Millimetres{30.0 * i}, width, width});
  }
  const Pot urn = make_pot(urn_request);
  measure("make_pot, rim and base", 200000,
          [&](int) { return inner_height(make_pot(request)).value(); });
  measure("section_at", 2000000,
          [&](int i) { return section_at(pot, Millimetres{i % 360 * 1.0}).length.value(); });
  measure("smallest_section, taper", 2000000, [&](int i) {
    return smallest_section(pot, Millimetres{i % 300 * 1.0}, 46_mm).length.value();
  });
  measure("smallest_section, profile of 12 levels", 1000000, [&](int i) {
    return smallest_section(urn, Millimetres{i % 300 * 1.0}, 46_mm).length.value();
  });
  measure("volume_between, taper", 1000000,
          [&](int i) { return volume_between(pot, Millimetres{i % 300 * 1.0}, 335_mm).value(); });
  for (const std::size_t layers : {1u, 3u, 7u, 30u}) {
    const StackRequest stack = stack_of(layers);
    const std::string what = "stack_layers, " + std::to_string(layers) + " layers";
    measure(what.c_str(), 300000, [&](int) { return stack_layers(stack).over_nose.value(); });
  }
  StackRequest shallow = stack_of(3);
  shallow.mix_surface = 150_mm;
  measure("stack_layers, 3 layers that do not fit", 300000,
          [&](int) { return static_cast<double>(stack_layers(shallow).drop.size()); });
  const std::vector<MaterialsLayer> layers{{85_mm, {{0.85, 12, 1.2, 15}}},
                                           {156_mm, {{1.05, 15, 1.3, 8}}},
                                           {243_mm, {{0.75, 9, 0.86, 30}}}};
  const std::vector<Pest> pests{Pest::squirrel, Pest::vole};
  measure("materials_for, 3 layers", 200000,
          [&](int) { return materials_for(pot, layers, pests, true).weight.total.value(); });
  return sink == 0.0 ? 1 : 0;
}
