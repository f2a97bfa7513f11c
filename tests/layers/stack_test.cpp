#include "layers/stack.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <random>

#include <catch2/catch.hpp>

#include "catalogue/catalogue.hpp"

using namespace bulbwright;

namespace {

/// Grade in cm, height to diameter, wanted, least and most depth.
StackLayer layer(double grade, double ratio, double wanted, double least, double most) {
  return {Millimetres{grade * 10.0 / std::numbers::pi * ratio}, Millimetres{wanted},
          Millimetres{least}, Millimetres{most}};
}

// Grades and depth limits of the trade as the catalogue has them (common practice; ratios from
// memory).
const StackLayer triumph_tulip = layer(12, 1.2, 180, 100, 250);
const StackLayer large_cupped_narcissus = layer(15, 1.3, 175, 110, 250);
const StackLayer large_crocus = layer(9, 0.86, 100, 50, 150);
const StackLayer grape_hyacinth = layer(9, 1.05, 100, 50, 150);

Stack stack_of(std::vector<StackLayer> layers, double surface) {
  return stack_layers({std::move(layers), Millimetres{surface}});
}

double cost_of(const StackRequest& request, const std::vector<double>& bases) {
  double cost = 0.0;
  for (std::size_t i = 0; i < bases.size(); ++i) {
    const StackLayer& l = request.layers[i];
    const double wanted = std::clamp(l.wanted_depth, l.least_depth, l.most_depth).value();
    const double off = request.mix_surface.value() - bases[i] - wanted;
    cost += l.weight * off * off;
  }
  return cost;
}

/// The rules of the stack, written out plainly a second time.
bool keeps_rules(const StackRequest& request, const std::vector<double>& bases, double over_nose,
                 double slack) {
  const double surface = request.mix_surface.value();
  for (std::size_t i = 0; i < bases.size(); ++i) {
    const StackLayer& l = request.layers[i];
    const double h = l.bulb_height.value(), depth = surface - bases[i];
    if (depth < l.least_depth.value() - slack || depth > l.most_depth.value() + slack) return false;
    if (depth - h < std::min(h, 25.0) - slack) return false;
    if (i == 0 && bases[0] < request.floor_margin.value() - slack) return false;
    if (i > 0 &&
        bases[i] < bases[i - 1] + request.layers[i - 1].bulb_height.value() + over_nose - slack) {
      return false;
    }
  }
  return true;
}

/// Least cost over all placements on whole millimetres, or infinity: plain recursion from the
/// bottom.
double grid_best(const StackRequest& request, double over_nose, std::vector<double>& bases) {
  const std::size_t i = bases.size();
  if (i == request.layers.size()) return cost_of(request, bases);
  double best = std::numeric_limits<double>::infinity();
  const int top = static_cast<int>(request.mix_surface.value());
  const double least =
      i == 0 ? 0.0 : bases[i - 1] + request.layers[i - 1].bulb_height.value() + over_nose;
  for (int z = static_cast<int>(std::ceil(least)); z < top; ++z) {
    bases.push_back(z);
    if (keeps_rules(request, bases, over_nose, 1e-9))
      best = std::min(best, grid_best(request, over_nose, bases));
    bases.pop_back();
  }
  return best;
}

struct Random {
  std::mt19937_64 engine{2027};
  int whole(int low, int high) {
    return low + static_cast<int>(engine() % static_cast<std::uint64_t>(high - low + 1));
  }
  /// Whole millimetres, so that the grid holds the exact feasible corners.
  StackRequest request(int most_layers, int tallest_pot) {
    StackRequest r;
    r.mix_surface = Millimetres{static_cast<double>(whole(100, tallest_pot))};
    const int n = whole(1, most_layers);
    for (int i = 0; i < n; ++i) {
      const int least = whole(20, 90), most = least + whole(0, 120);
      r.layers.push_back({Millimetres{static_cast<double>(whole(10, 50))},
                          Millimetres{static_cast<double>(whole(least, most))},
                          Millimetres{static_cast<double>(least)},
                          Millimetres{static_cast<double>(most)},
                          static_cast<double>(whole(1, 4))});
    }
    return r;
  }
};

std::vector<double> bases_of(const Stack& stack) {
  std::vector<double> bases;
  for (const StackedLayer& placed : stack.layers) bases.push_back(placed.base.value());
  return bases;
}

}  // namespace

TEST_CASE("no placement on a millimetre grid is better than the stack", "[stack][oracle]") {
  Random random;
  int feasible = 0, reduced = 0, infeasible = 0;
  for (int round = 0; round < 400; ++round) {
    const StackRequest request = random.request(3, 320);
    const Stack stack = stack_layers(request);
    std::vector<double> none;
    if (!stack.feasible) {
      ++infeasible;
      CHECK(std::isinf(grid_best(request, least_over_nose.value(), none)));
      continue;
    }
    const std::vector<double> bases = bases_of(stack);
    const double over_nose = stack.over_nose.value();
    CHECK(keeps_rules(request, bases, over_nose, 1e-6));
    if (stack.over_nose_reduced) {
      // A hundredth more would not fit: the least depths, walked down from the top.
      ++reduced;
      const double more = over_nose + 0.01;
      bool fits = true;
      for (std::size_t i = 0; i < request.layers.size() && fits; ++i) {
        double depth = 0.0;  // least depth of layer i by walking down from the top
        for (std::size_t k = request.layers.size(); k-- > i;) {
          const StackLayer& l = request.layers[k];
          const double h = l.bulb_height.value();
          depth = std::max({l.least_depth.value(), h + std::min(h, 25.0),
                            k + 1 < request.layers.size() ? depth + h + more : 0.0});
          if (depth > l.most_depth.value()) fits = false;
          if (k == 0 && depth > request.mix_surface.value() - 50.0) fits = false;
        }
      }
      CHECK_FALSE(fits);
      continue;  // bases are not on the grid
    }
    ++feasible;
    const double grid = grid_best(request, over_nose, none);
    const double exact = cost_of(request, bases);
    CHECK(exact <= grid + 1e-6);
    // Rounding the exact bases up or down costs at most a millimetre a layer.
    CHECK(std::sqrt(grid) <= std::sqrt(exact) + 1.0 * std::sqrt(3 * 4.0) + 1e-6);
  }
  // The draw covers all three answers.
  CHECK(feasible > 60);
  CHECK(reduced > 10);
  CHECK(infeasible > 60);
}

// Karush-Kuhn-Tucker: the least of a convex sum under linear limits is the one feasible point that
// no feasible direction improves. Chains of layers that touch, shifted together, span those
// directions.
TEST_CASE("no run of touching layers can be shifted to a better place", "[stack][law]") {
  Random random;
  int tried = 0;
  for (int round = 0; round < 20000; ++round) {
    const StackRequest request = random.request(7, 900);
    const Stack stack = stack_layers(request);
    if (!stack.feasible) continue;
    ++tried;
    const std::vector<double> bases = bases_of(stack);
    const double over_nose = stack.over_nose.value(), cost = cost_of(request, bases);
    REQUIRE(keeps_rules(request, bases, over_nose, 1e-6));
    for (std::size_t i = 0; i < bases.size(); ++i) {
      for (std::size_t k = i; k < bases.size(); ++k) {
        for (const double step : {-0.01, 0.01}) {
          std::vector<double> moved = bases;
          for (std::size_t j = i; j <= k; ++j) moved[j] += step;
          if (keeps_rules(request, moved, over_nose, 1e-9))
            CHECK(cost_of(request, moved) >= cost - 1e-6);
        }
      }
    }
  }
  CHECK(tried > 3000);
}

// Pooling first and clamping afterwards is a known wrong way: here it would leave the cost higher.
TEST_CASE("a block is clamped to its own bounds before its neighbours are judged", "[stack]") {
  // Wanted bases (less what lies below): 100 for the lower, 60 for the upper, which may not go
  // above 70: pooled 80, clamped 70 for both.
  StackRequest request;
  request.mix_surface = 300_mm;
  request.layers = {{20_mm, 200_mm, 40_mm, 250_mm}, {20_mm, 195_mm, 185_mm, 250_mm}};
  const Stack stack = stack_layers(request);
  REQUIRE(stack.feasible);
  CHECK(stack.layers[0].base.value() == Approx(70.0));
  CHECK(stack.layers[1].base.value() == Approx(115.0));
}

// common practice: three layers fit a pot of 380 mm x 360 mm with more than 50 mm of mix beneath,
// mix ending an inch below the rim.
TEST_CASE("three layers fit the usual wide pot with mix beneath", "[stack]") {
  const Stack stack = stack_of({triumph_tulip, large_cupped_narcissus, large_crocus}, 335);
  REQUIRE(stack.feasible);
  CHECK(stack.over_nose == 25_mm);
  CHECK_FALSE(stack.over_nose_reduced);
  CHECK(stack.layers[0].base > 50_mm);
  for (std::size_t i = 1; i < 3; ++i)
    CHECK((stack.layers[i].base - stack.layers[i - 1].nose).value() >= 25.0 - 1e-9);
  // 2 to 3 bulb heights of mix over a nose is the bed rule; every nose keeps at least an inch.
  for (const StackedLayer& placed : stack.layers) CHECK(placed.cover >= 25_mm);
}

// common practice: tulips sit about 7 in deep under a layer of crocus or grape hyacinth.
TEST_CASE("tulips sit about seven inches deep under small bulbs", "[stack]") {
  for (const StackLayer& small : {large_crocus, grape_hyacinth}) {
    const Stack stack = stack_of({triumph_tulip, small}, 335);
    REQUIRE(stack.feasible);
    CHECK(stack.layers[0].depth.value() / 25.4 == Approx(7.0).margin(0.5));
  }
}

// The catalogue's own worked check of its depth limits, with the mix surface at 335 mm: the tulip
// at its deepest (250 mm) stands 85 above the floor with its nose at 204; narcissus at 179, nose
// 117; crocus at 92, which leaves 42 mm over its least depth of 50.
TEST_CASE("the depth limits leave what the worked check says", "[stack]") {
  CHECK(335 - 250 == 85);
  const double tulip_nose = 250 - triumph_tulip.bulb_height.value();
  CHECK(tulip_nose == Approx(204).margin(0.5));
  const double narcissus_nose = tulip_nose - 25 - large_cupped_narcissus.bulb_height.value();
  CHECK(narcissus_nose == Approx(117).margin(0.5));
  // Wishing for the greatest depth everywhere pushes the solver to these very limits.
  const auto deep = [](StackLayer l) {
    l.wanted_depth = l.most_depth;
    return l;
  };
  StackLayer tulip = deep(triumph_tulip);
  tulip.weight = 1e9;
  const Stack stack = stack_of({tulip, deep(large_cupped_narcissus), deep(large_crocus)}, 335);
  REQUIRE(stack.feasible);
  CHECK(stack.layers[0].depth.value() == Approx(250).margin(0.5));
  CHECK(stack.layers[1].depth.value() == Approx(179).margin(0.5));
  CHECK(stack.layers[2].depth.value() == Approx(92).margin(0.5));

  // Largest grade and tallest shape of all three at once: 25 mm over the noses does not fit, about
  // 20 mm does.
  const Stack largest = stack_of(
      {layer(14, 1.4, 180, 100, 250), layer(18, 1.6, 175, 110, 250), layer(10, 1.0, 100, 50, 150)},
      335);
  REQUIRE(largest.feasible);
  CHECK(largest.over_nose_reduced);
  CHECK(largest.over_nose.value() == Approx(20).margin(0.6));
}

TEST_CASE("a pot too shallow says what height would do and what to leave out", "[stack]") {
  const Stack stack = stack_of({triumph_tulip, large_cupped_narcissus, large_crocus}, 175);
  REQUIRE_FALSE(stack.feasible);
  REQUIRE(stack.least_surface);
  CHECK(stack.layers.empty());
  // The height named does, a millimetre less does not.
  const double least = stack.least_surface->value();
  CHECK(stack_of({triumph_tulip, large_cupped_narcissus, large_crocus}, least).feasible);
  CHECK_FALSE(
      stack_of({triumph_tulip, large_cupped_narcissus, large_crocus}, least - 0.01).feasible);
  // With 15 mm more over each of the two lower noses nothing is reduced, with less it is.
  const double wanted = least + 2 * (25.0 - 10.0);
  CHECK_FALSE(
      stack_of({triumph_tulip, large_cupped_narcissus, large_crocus}, wanted).over_nose_reduced);
  CHECK(stack_of({triumph_tulip, large_cupped_narcissus, large_crocus}, wanted - 0.01)
            .over_nose_reduced);
  REQUIRE(stack.drop.size() == 1);
  CHECK(stack.drop[0] == 1);  // the narcissus, the tallest bulb between two others
  CHECK(stack_of({triumph_tulip, large_crocus}, 175).feasible);
}

TEST_CASE("the height named is the least and what is dropped makes the rest fit", "[stack][law]") {
  Random random;
  int shallow = 0, never = 0;
  for (int round = 0; round < 20000; ++round) {
    const StackRequest request = random.request(6, 400);
    const Stack stack = stack_layers(request);
    if (stack.feasible) {
      CHECK(stack.least_surface);
      CHECK(*stack.least_surface <= request.mix_surface + Millimetres{1e-6});
      continue;
    }
    if (stack.least_surface) {
      ++shallow;
      StackRequest other = request;
      other.mix_surface = *stack.least_surface;
      CHECK(stack_layers(other).feasible);
      other.mix_surface -= Millimetres{0.01};
      CHECK_FALSE(stack_layers(other).feasible);
    } else {
      ++never;
      StackRequest other = request;
      other.mix_surface = 5000_mm;
      CHECK_FALSE(stack_layers(other).feasible);
    }
    if (request.layers.size() == 1) {
      CHECK(stack.drop.empty());
      continue;
    }
    StackRequest rest = request;
    for (std::size_t i = stack.drop.size(); i-- > 0;)
      rest.layers.erase(rest.layers.begin() + static_cast<std::ptrdiff_t>(stack.drop[i]));
    if (!stack.drop.empty()) CHECK(stack_layers(rest).feasible);
    if (stack.drop.size() > 1) {
      for (std::size_t i = 0; i < request.layers.size(); ++i) {
        StackRequest one = request;
        one.layers.erase(one.layers.begin() + static_cast<std::ptrdiff_t>(i));
        CHECK_FALSE(stack_layers(one).feasible);  // else one would have been enough
      }
    }
  }
  CHECK(shallow > 500);
  CHECK(never > 500);
}

TEST_CASE("no layers and one layer are stacks too", "[stack]") {
  CHECK(stack_of({}, 335).feasible);
  const Stack one = stack_of({triumph_tulip}, 335);
  REQUIRE(one.feasible);
  CHECK(one.layers[0].depth == 180_mm);
  CHECK(one.layers[0].base == 155_mm);
}

TEST_CASE("kinds in one layer share the limits and the tallest bulb", "[stack]") {
  const StackLayer kinds[] = {{30_mm, 150_mm, 100_mm, 200_mm, 2.0}, {40_mm, 90_mm, 60_mm, 120_mm}};
  const auto common = common_layer(kinds);
  REQUIRE(common);
  CHECK(common->bulb_height == 40_mm);
  CHECK(common->least_depth == 100_mm);
  CHECK(common->most_depth == 120_mm);
  CHECK(common->wanted_depth == 120_mm);  // (2 * 150 + 90) / 3 = 130, within the limits
  const StackLayer apart[] = {{30_mm, 150_mm, 130_mm, 200_mm}, {40_mm, 90_mm, 60_mm, 120_mm}};
  CHECK_FALSE(common_layer(apart));
  CHECK_FALSE(common_layer({}));
}

TEST_CASE("the latest flowers lie lowest, and class and height only break ties", "[stack]") {
  const Day march{2027, 3, 1}, april{2027, 4, 10};
  const std::vector<OrderKey> by_peak{{march, 8, 60_mm}, {april, 1, 20_mm}};
  CHECK(order_layers(by_peak) == std::vector<std::size_t>{1, 0});
  const std::vector<OrderKey> by_class{{april, 5, 60_mm}, {april, 6, 20_mm}};
  CHECK(order_layers(by_class) == std::vector<std::size_t>{1, 0});
  const std::vector<OrderKey> by_height{{april, 5, 20_mm}, {april, 5, 60_mm}, {april, 5, 20_mm}};
  CHECK(order_layers(by_height) == std::vector<std::size_t>{1, 0, 2});
  const std::vector<OrderKey> unknown{{march, 6, 20_mm}, {{}, 5, 60_mm}};
  CHECK(order_layers(unknown) == std::vector<std::size_t>{0, 1});
  CHECK(order_layers({}).empty());
}

TEST_CASE("an order of the grower's own is judged by flowering alone", "[stack]") {
  const Day march{2027, 3, 1}, april{2027, 4, 10};
  const std::vector<OrderKey> keys{
      {march, 8, 60_mm}, {april, 1, 20_mm}, {april, 9, 90_mm}, {{}, 9, 90_mm}};
  CHECK(flowering_before_the_layer_above(keys) == std::vector<std::size_t>{0});
}

// common practice: bulbs are set two to three times their height deep at the least (base of the
// bulb), and each kind alone in a usual pot gets the depth that its catalogue entry wants.
TEST_CASE("every kind alone in a usual pot gets its wanted depth", "[stack][catalogue]") {
  const Catalogue catalogue = builtin_catalogue();
  REQUIRE(catalogue.taxa().size() >= 50);
  for (const Taxon& taxon : catalogue.taxa()) {
    CAPTURE(taxon.id);
    const StackLayer one = layer(taxon.circumference_cm.value, taxon.height_to_diameter.value,
                                 taxon.depth_mm.value, taxon.depth_mm.low, taxon.depth_mm.high);
    const Stack stack = stack_of({one}, 335);
    REQUIRE(stack.feasible);
    CHECK(stack.layers[0].depth.value() == Approx(taxon.depth_mm.value));
    CHECK(stack.layers[0].depth / one.bulb_height >= 2.0);
  }
}
