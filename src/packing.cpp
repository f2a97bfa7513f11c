#include "bulbwright/packing.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "packing_lattice.hpp"
#include "packing_result.hpp"
#include "packing_rounding.hpp"
#include "packing_search.hpp"
#include "packing_seeds.hpp"

namespace bulbwright {
namespace {

using packing::Bound;
using packing::Coordinates;
using packing::GridPoint;
using packing::KindDiscs;
using packing::Outline;
using packing::Point;
using packing::Random;

/// A layout that is certified as printed.
struct Certified {
  KindDiscs bulbs;
  std::vector<GridPoint> grid;
};

/// One question of pack_most, with the work left for it.
class MostBulbs {
 public:
  MostBulbs(const Outline& outline, std::span<const PackKind> kinds, double gap, double wall,
            Effort effort, Arrange arrange)
      : outline_{outline},
        kinds_{kinds},
        gap_{gap},
        wall_{wall},
        arrange_{arrange},
        work_{packing::work_of(effort)},
        tries_{effort == Effort::quick    ? 6
               : effort == Effort::normal ? 20
                                          : 60},
        effort_{effort} {}

  Packing solve() {
    const Bound bound = packing::bound_of(outline_, kinds_, gap_, wall_);
    if (bound.most > 0) climb(bound.most);
    Packing result = packing::packing_of(outline_, best_.bulbs, best_.grid, kinds_, gap_, wall_);
    result.upper_bound = bound.most;
    result.bound_name = bound.name;
    return result;
  }

 private:
  [[nodiscard]] KindDiscs bulbs(std::size_t n) const {
    return packing::discs_of(kinds_, packing::apportion(n, kinds_), gap_, wall_);
  }

  /// Rounds and certifies; the best answer so far is replaced when it holds.
  bool keep(KindDiscs bulbs, const Coordinates& x) {
    packing::Rounder rounder{outline_, bulbs.discs};
    auto grid = rounder.round(x, tries_, random_);
    work_ -= rounder.work();
    if (!grid) return false;
    best_ = {std::move(bulbs), std::move(*grid)};
    return true;
  }

  /// Places for the start: the largest kind's lattice holds for every kind.
  void start() {
    double spacing = 0.0, margin = 0.0;
    for (const PackKind& kind : kinds_) {
      spacing = std::max(spacing, kind.diameter.value() + gap_);
      margin = std::max(margin, wall_ + kind.diameter.value() / 2.0);
    }
    const int turns = effort_ == Effort::quick ? 8 : 24,
              offsets = effort_ == Effort::quick ? 6 : 12;
    places_ = packing::best_lattice(outline_, spacing, margin, turns, offsets);
    if (places_.empty()) places_.push_back(outline_.deepest());
  }

  /// Places for the next disc count: those that are, and one drawn.
  [[nodiscard]] Coordinates arranged(const KindDiscs& bulbs, std::vector<Point> places) {
    while (places.size() < bulbs.kind.size()) {
      places.push_back(packing::random_point(outline_, bulbs.discs.margin.back(), random_));
    }
    places.resize(bulbs.kind.size());
    if (kinds_.size() == 1) return packing::to_coordinates(places);
    const auto order = packing::arrange_kinds(places, bulbs.kind, arrange_, random_);
    std::vector<Point> ordered;
    for (const std::size_t place : order) ordered.push_back(places[place]);
    return packing::to_coordinates(ordered);
  }

  void climb(std::size_t most) {
    start();
    std::size_t n = std::min(most, places_.size());
    // The lattice itself, or, where rounding kills it, fewer of its points.
    for (; n > 0; --n) {
      KindDiscs all = bulbs(n);
      const Coordinates x = arranged(all, places_);
      if (keep(std::move(all), x)) break;
    }
    while (n < most && work_ > 0) {
      KindDiscs all = bulbs(n + 1);
      packing::Search search{outline_, all.discs, 1e-6, 0x5eed + n};
      bool fits = search.try_start(arranged(all, places_));
      bool kept = false;
      while (!kept && search.work() < work_) {
        if (!fits) fits = search.run(work_ - search.work());
        if (!fits) break;
        kept = keep(all, search.layout());
        fits = false;
      }
      work_ -= search.work();
      if (!kept) break;
      ++n;
      places_ = packing::to_points(search.layout());
    }
  }

  const Outline& outline_;
  std::span<const PackKind> kinds_;
  double gap_, wall_;
  Arrange arrange_;
  long work_;
  int tries_;
  Effort effort_;
  Random random_{2026};
  std::vector<Point> places_;
  Certified best_;
};

}  // namespace

Packing pack_most(const Section& section, std::span<const PackKind> kinds, Millimetres gap,
                  Millimetres wall, Effort effort, Arrange arrange) {
  const Outline outline{section};
  return MostBulbs{outline, kinds, gap.value(), wall.value(), effort, arrange}.solve();
}

}  // namespace bulbwright
