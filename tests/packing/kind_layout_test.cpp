#include <algorithm>
#include <cmath>
#include <vector>

#include <catch2/catch.hpp>

#include "packing/outline.hpp"
#include "packing/packing.hpp"

using namespace bulbwright;

namespace {

constexpr double gap = 15.0, wall = 10.0;

const std::vector<Section> outlines{{Shape::round, 380_mm, 380_mm, {}},
                                    {Shape::oval, 500_mm, 300_mm, {}},
                                    {Shape::rectangle, 600_mm, 200_mm, {}},
                                    {Shape::half_round, 500_mm, 250_mm, {}}};

/// Sizes of two and of three kinds at the shares growers use.
std::vector<std::vector<PackKind>> mixtures() {
  std::vector<std::vector<PackKind>> all;
  for (const auto& [large, small] : {std::pair{45.0, 25.0}, {40.0, 20.0}}) {
    for (const auto& [more, fewer] : {std::pair{1.0, 1.0}, {1.0, 3.0}, {3.0, 1.0}}) {
      all.push_back({{Millimetres{large}, more, 0}, {Millimetres{small}, fewer, 0}});
    }
  }
  all.push_back({{40_mm, 1.0, 0}, {30_mm, 1.0, 0}, {20_mm, 1.0, 0}});
  all.push_back({{45_mm, 1.0, 0}, {25_mm, 2.0, 0}, {12_mm, 4.0, 0}});
  return all;
}

/// What a careful hand does: bulb after bulb, the kind that is furthest behind its share, each at
/// the first free place of a 2 mm grid from one side on, until one finds none.
std::size_t greedy_fill(const Section& section, const std::vector<PackKind>& kinds) {
  struct Placed {
    double x, y, radius;
  };
  const packing::Outline outline{section};
  std::vector<Placed> placed;
  std::vector<double> given(kinds.size(), 0.0);
  while (placed.size() < 1000) {
    std::size_t kind = 0;
    for (std::size_t k = 1; k < kinds.size(); ++k) {
      if ((given[k] + 0.5) / kinds[k].share < (given[kind] + 0.5) / kinds[kind].share) kind = k;
    }
    const double r = kinds[kind].diameter.value() / 2.0, a = outline.half_length();
    bool found = false;
    for (double y = outline.bottom() + wall + r; !found && y <= outline.top(); y += 2.0) {
      for (double x = -a + wall + r; !found && x <= a; x += 2.0) {
        found = std::all_of(placed.begin(), placed.end(),
                            [&](const Placed& other) {
                              return std::hypot(x - other.x, y - other.y) >= r + other.radius + gap;
                            }) &&
                outline.depth({x, y}) >= wall + r;
        if (found) placed.push_back({x, y, r});
      }
    }
    if (!found) break;
    given[kind] += 1.0;
  }
  return placed.size();
}

/// The most bulbs of a kind of at most a third of them that stand together, from what is printed.
std::size_t largest_group(const Packing& p, const std::vector<PackKind>& kinds) {
  std::size_t largest = 0;
  const std::size_t n = p.bulbs.size();
  for (std::size_t kind = 0; kind < kinds.size(); ++kind) {
    std::vector<std::size_t> group(n);  // a number for each bulb's group
    std::size_t of_kind = 0;
    for (std::size_t i = 0; i < n; ++i) {
      group[i] = i;
      if (p.bulbs[i].kind == kind) ++of_kind;
    }
    if (3 * of_kind > n) continue;
    const double near = 1.2 * (kinds[kind].diameter.value() + p.gap.value());
    for (std::size_t i = 0; i < n; ++i) {
      for (std::size_t j = 0; j < i; ++j) {
        const PlacedBulb &a = p.bulbs[i], &b = p.bulbs[j];
        if (a.kind != kind || b.kind != kind) continue;
        if (std::hypot(a.x_mm - b.x_mm, a.y_mm - b.y_mm) > near) continue;
        const std::size_t from = group[i], to = group[j];
        std::replace(group.begin(), group.end(), from, to);
      }
    }
    for (std::size_t g = 0; g < n; ++g) {
      if (p.bulbs[g].kind != kind) continue;
      const auto size = static_cast<std::size_t>(std::count(group.begin(), group.end(), group[g]));
      largest = std::max(largest, size);
    }
  }
  return largest;
}

}  // namespace

TEST_CASE("a mixture is no fewer than a greedy fill, nor than its largest kind alone",
          "[packing][oracle]") {
  std::size_t ours = 0, greedy = 0;
  for (const Section& section : outlines) {
    for (const std::vector<PackKind>& kinds : mixtures()) {
      const Packing p =
          pack_most(section, kinds, Millimetres{gap}, Millimetres{wall}, Effort::quick);
      const std::size_t filled = greedy_fill(section, kinds);
      CAPTURE(word_of(section.shape), kinds.size(), kinds[0].diameter.value(), kinds[0].share,
              kinds[1].diameter.value(), kinds[1].share);
      CHECK(p.bulbs.size() >= filled);
      const Packing alone =
          pack_most(section, {kinds.data(), 1}, Millimetres{gap}, Millimetres{wall}, Effort::quick);
      CHECK(p.bulbs.size() >= alone.bulbs.size());
      ours += p.bulbs.size();
      greedy += filled;
    }
  }
  CHECK(ours * 100 > greedy * 104);  // and clearly more over all of them
}

TEST_CASE("no scarce kind of a mixture stands in a clump", "[packing][law]") {
  for (const Section& section : outlines) {
    for (std::vector<PackKind> kinds : mixtures()) {
      CAPTURE(word_of(section.shape), kinds.size(), kinds[0].diameter.value(), kinds[0].share,
              kinds[1].diameter.value(), kinds[1].share);
      const Packing most =
          pack_most(section, kinds, Millimetres{gap}, Millimetres{wall}, Effort::quick);
      CHECK(largest_group(most, kinds) <= largest_clump);
      for (PackKind& kind : kinds) kind.count = static_cast<int>(4.0 * kind.share);
      const Packing own = place_count(section, kinds, 3_mm, Millimetres{wall}, Effort::quick);
      REQUIRE_FALSE(own.bulbs.empty());
      CHECK(largest_group(own, kinds) <= largest_clump);
    }
  }
}

// Bulbs that stand within 1.2 times their least distance are neighbours; places given out by chance
// make sum of n_k (n_k - 1) / (n (n - 1)) of them alike.
TEST_CASE("kinds mixed evenly have at most three quarters of the like neighbours of chance",
          "[packing][law]") {
  double sum = 0.0;
  int layouts = 0;
  for (const Section& section : outlines) {
    for (const auto& [large, small] : {std::pair{40.0, 40.0}, {40.0, 30.0}, {50.0, 30.0}}) {
      const std::vector<PackKind> kinds{{Millimetres{large}, 1.0, 0}, {Millimetres{small}, 1.0, 0}};
      const Packing p =
          pack_most(section, kinds, Millimetres{gap}, Millimetres{wall}, Effort::quick);
      double like = 0.0, all = 0.0, chance = 0.0;
      std::vector<double> of_kind(2, 0.0);
      for (std::size_t i = 0; i < p.bulbs.size(); ++i) {
        const PlacedBulb& a = p.bulbs[i];
        of_kind[a.kind] += 1.0;
        for (std::size_t j = 0; j < i; ++j) {
          const PlacedBulb& b = p.bulbs[j];
          const double least =
              (kinds[a.kind].diameter + kinds[b.kind].diameter).value() / 2.0 + p.gap.value();
          if (std::hypot(a.x_mm - b.x_mm, a.y_mm - b.y_mm) > 1.2 * least) continue;
          all += 1.0;
          like += a.kind == b.kind ? 1.0 : 0.0;
        }
      }
      const auto n = static_cast<double>(p.bulbs.size());
      for (const double count : of_kind) chance += count * (count - 1.0) / (n * (n - 1.0));
      CAPTURE(word_of(section.shape), large, small, like, all, chance);
      CHECK(like / all <= 0.85 * chance);
      sum += like / all / chance;
      ++layouts;
    }
  }
  CHECK(sum / layouts <= 0.75);
}

namespace {

/// As many bulbs as two plain blocks hold in a rectangle, worked out here: columns of the first
/// kind from one end, of the second from the other, each from wall to wall with every second one
/// moved by half a place, in the shares to the nearest bulb.
std::size_t two_blocks(double length, double width, const std::vector<PackKind>& kinds) {
  const auto columns = [&](const PackKind& kind, std::size_t count) {  // their length, mm
    const double d = kind.diameter.value(), s = d + gap, room = width - 2.0 * wall - d;
    const double halves = std::floor(2.0 * room / s), half = room / halves;
    const double pitch = std::sqrt(std::max(0.0, s * s - half * half));
    std::size_t set = 0, column = 0;
    while (set < count) {
      set += static_cast<std::size_t>((halves - static_cast<double>(column % 2)) / 2.0) + 1;
      ++column;
    }
    return pitch * static_cast<double>(column - 1) + d;
  };
  std::size_t best = 0;
  for (std::size_t n = 2; n < 300; ++n) {
    const double share = kinds[0].share / (kinds[0].share + kinds[1].share);
    const auto first = static_cast<std::size_t>(std::lround(share * static_cast<double>(n)));
    if (first == 0 || first == n) continue;
    if (columns(kinds[0], first) + gap + columns(kinds[1], n - first) > length - 2.0 * wall) break;
    best = n;
  }
  return best;
}

}  // namespace

TEST_CASE("a drift is no fewer than two plain blocks", "[packing][oracle]") {
  for (const auto& [length, width] : {std::pair{776.0, 315.0}, {642.0, 426.0}, {600.0, 200.0}}) {
    for (const auto& [large, small] : {std::pair{50.0, 20.0}, {40.0, 20.0}, {40.0, 30.0}}) {
      const std::vector<PackKind> kinds{{Millimetres{large}, 1.0, 0}, {Millimetres{small}, 2.0, 0}};
      const Section section{Shape::rectangle, Millimetres{length}, Millimetres{width}, {}};
      CAPTURE(length, width, large, small);
      CHECK(pack_most(section, kinds, Millimetres{gap}, Millimetres{wall}, Effort::quick,
                      Arrange::drift)
                .bulbs.size() >= two_blocks(length, width, kinds));
    }
  }
}

TEST_CASE("a drift keeps each kind in a band of its own", "[packing][law]") {
  // Bands lie across the longer side in the order of the kinds; at their edge a bulb may stand up
  // to one largest distance past one of a later kind.
  for (const Section& section : outlines) {
    for (const std::vector<PackKind>& kinds : mixtures()) {
      const auto check = [&](const Packing& p) {
        double largest = 0.0;
        for (const PackKind& kind : kinds) largest = std::max(largest, kind.diameter.value());
        for (const PlacedBulb& a : p.bulbs) {
          for (const PlacedBulb& b : p.bulbs) {
            if (a.kind < b.kind) CHECK(a.x_mm <= b.x_mm + largest + p.gap.value() + 0.2);
          }
        }
      };
      const Packing most = pack_most(section, kinds, Millimetres{gap}, Millimetres{wall},
                                     Effort::quick, Arrange::drift);
      check(most);
      const auto larger = std::max_element(
          kinds.begin(), kinds.end(), [](auto& a, auto& b) { return a.diameter < b.diameter; });
      const std::vector<PackKind> alone{*larger};
      CHECK(most.bulbs.size() >= pack_most(section, alone, Millimetres{gap}, Millimetres{wall},
                                           Effort::quick, Arrange::drift)
                                     .bulbs.size());
    }
    const std::vector<PackKind> same{{40_mm, 1.0, 0}, {40_mm, 1.0, 0}};
    const Packing drift = pack_most(section, same, Millimetres{gap}, Millimetres{wall},
                                    Effort::quick, Arrange::drift);
    CHECK(drift.bulbs.size() >= 2);
    for (const PlacedBulb& a : drift.bulbs)
      for (const PlacedBulb& b : drift.bulbs)
        if (a.kind < b.kind) CHECK(a.x_mm <= b.x_mm);
  }
}
