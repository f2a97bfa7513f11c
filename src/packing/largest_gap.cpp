#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

#include "packing/answer.hpp"
#include "packing/choices.hpp"
#include "packing/lattice.hpp"
#include "packing/layout_search.hpp"
#include "packing/packing.hpp"
#include "packing/rounding.hpp"
#include "packing/seeds.hpp"

namespace bulbwright {
namespace {

using packing::Coordinates;
using packing::GridPoint;
using packing::KindDiscs;
using packing::Outline;
using packing::Point;
using packing::Random;

/// One question of place_count: the largest gap for given bulbs.
class LargestGap {
 public:
  LargestGap(const Outline& outline, std::span<const PackKind> kinds, double wall, Effort effort,
             Arrange arrange)
      : outline_{outline},
        kinds_{kinds},
        wall_{wall},
        order_{arrange},
        all_work_{packing::work_of(effort)},
        work_{all_work_} {
    for (const PackKind& kind : kinds) counts_.push_back(static_cast<std::size_t>(kind.count));
  }

  Packing solve(double least_gap, double area) {
    Packing result = nothing(least_gap);
    const packing::Bound at_least = packing::bound_of(outline_, kinds_, least_gap, wall_);
    result.upper_bound = at_least.most;
    result.bound_name = at_least.name;
    if (at_least.most < std::accumulate(counts_.begin(), counts_.end(), std::size_t{0})) {
      return result;  // proven: no search would find a layout
    }
    const double even = even_gap(area);
    bool placed = false;
    if (least_gap <= even) placed = widen(least_gap, even);
    if (!placed) {
      // Even spread would be tighter than the least gap: only the least gap itself is left to try.
      placed = even < least_gap && widen(least_gap, least_gap);
    }
    double gap = least_gap;
    if (placed) result = printed(least_gap, gap);
    const packing::Bound bound = packing::bound_of(outline_, kinds_, gap, wall_);
    result.upper_bound = std::max(bound.most, result.bulbs.size());
    result.bound_name = bound.name;
    return result;
  }

 private:
  [[nodiscard]] KindDiscs bulbs(double gap, double inset) const {
    KindDiscs all = packing::discs_of(kinds_, counts_, gap, wall_ + inset);
    return all;
  }

  /// The gap at which every bulb has its share of the section in a hexagonal lattice:
  /// sum of sqrt(3)/2 (d + g)^2 = area.
  [[nodiscard]] double even_gap(double area) const {
    double n = 0.0, sum = 0.0, squares = 0.0;
    for (std::size_t k = 0; k < kinds_.size(); ++k) {
      const double d = kinds_[k].diameter.value(), c = static_cast<double>(counts_[k]);
      n += c;
      sum += c * d;
      squares += c * d * d;
    }
    const double rest = squares - area * 2.0 / std::sqrt(3.0);
    const double root = sum * sum - n * rest;
    return (-sum + std::sqrt(std::max(0.0, root))) / n;
  }

  /// Tries to fit at `gap` from the present layout, hopping for at most `work`.
  bool fit(double gap, double inset, long work) {
    const KindDiscs all = bulbs(gap, inset);
    packing::LayoutSearch search{outline_, all.discs, 1e-6, 0x5eed};
    const bool fits =
        search.try_start(x_.empty() ? seed(all) : x_) || (work > 0 && search.run(work));
    work_ -= search.work();
    if (!fits) return false;
    const Coordinates x = put_right(search.layout(), all);
    if (misplaced(x, all)) return false;
    x_ = x;
    return true;
  }

  [[nodiscard]] bool misplaced(const Coordinates& x, const KindDiscs& all) {
    if (kinds_.size() < 2 || any_place_) return false;
    const bool out = order_.out_of_place(x, all);
    work_ -= order_.spent();
    return out;
  }

  /// A layout that fits with its clumps broken by a few swaps, or its bands restored, as far as
  /// that goes.
  Coordinates put_right(Coordinates x, const KindDiscs& all) {
    if (order_.arrange() == Arrange::drift) return packing::banded(std::move(x), all);
    for (int k = 0; k < 8 && misplaced(x, all); ++k) {
      packing::LayoutSearch search{outline_, all.discs, 1e-6, random_.bits()};
      if (search.try_start(order_.with_swap(x, all, random_)) &&
          order_.clump_members(search.layout(), all).size() <=
              order_.clump_members(x, all).size()) {
        x = search.layout();
      }
      work_ -= search.work() + order_.spent();
    }
    return x;
  }

  Coordinates seed(const KindDiscs& all) {
    const std::size_t n = all.kind.size();
    const double spacing = 2.0 * all.discs.reach.front();
    std::vector<Point> places =
        packing::lattice_seed(outline_, n, spacing, all.discs.margin.front(), random_);
    const auto order = order_.arranged(places, all.kind, random_);
    std::vector<Point> ordered;
    for (const std::size_t place : order) ordered.push_back(places[place]);
    return packing::to_coordinates(ordered);
  }

  /// Doubles the present layout's gap step by step while it holds, then halves the step.
  void grow(double& gap, double most) {
    double step = std::max(0.02, (most - gap) / 4.0);
    while (step > 0.005 && gap < most && work_ > 0) {
      const double next = std::min(most, gap + step);
      if (fit(next, 0.0, 0)) {
        gap = next;
      } else {
        step /= 2.0;
      }
    }
  }

  bool widen(double least, double most) {
    double gap = least;
    const long all_work = work_;
    if (!fit(gap, 0.0, all_work / 2)) {
      if (kinds_.size() < 2) return false;
      any_place_ = true;  // a layout with a kind out of place is better than none
      if (!fit(gap, 0.0, all_work / 4)) return false;
    }
    grow(gap, most);
    while (gap < most && work_ > 0) {
      const double next = std::min(most, gap + 0.05);
      if (!fit(next, 0.0, std::min(work_, all_work / 4))) continue;
      gap = next;
      grow(gap, most);
    }
    gap_ = gap;
    if (gap >= most) draw_inwards();
    return true;
  }

  static Packing nothing(double least_gap) {
    constexpr double infinity = std::numeric_limits<double>::infinity();
    Packing none;
    none.gap = Millimetres{least_gap};
    none.least_gap = none.least_wall = Millimetres{infinity};
    return none;
  }

  /// With room to spare the layout is drawn away from the wall as far as the gap allows.
  void draw_inwards() {
    if (x_.size() == 2) {
      x_ = {outline_.deepest().x, outline_.deepest().y};
      return;
    }
    double inset = 0.0;
    double step = outline_.inradius() / 4.0;
    while (step > 0.05) {
      if (fit(gap_, inset + step, 0)) {
        inset += step;
      } else {
        step /= 2.0;
      }
    }
  }

  /// Rounds at the largest gap that survives it. Gaps are printed in whole tenths, downwards, so
  /// no other need be tried.
  Packing printed(double least_gap, double& gap) {
    const double best = std::floor(gap_ * 10.0 + 1e-7);
    for (int tenths = 0; tenths <= 10; ++tenths) {
      const double wanted = std::max(least_gap, (best - tenths) / 10.0);
      KindDiscs all = bulbs(wanted, 0.0);
      packing::Rounder rounder{outline_, all.discs};
      const auto grid = rounder.round(x_, 12, random_, all_work_ / 16);
      if (grid && !misplaced(packing::printed_coordinates(*grid), all)) {
        Packing result = packing::packing_of(outline_, all, *grid, kinds_, wanted, wall_);
        // Downward to 0.1 mm, so that what is printed holds.
        gap = all.kind.size() < 2 ? wanted : result.least_gap.value();
        gap = std::max(least_gap, std::floor(gap * 10.0 + 1e-7) / 10.0);
        result.gap = Millimetres{gap};
        return result;
      }
      if (wanted <= least_gap) break;
    }
    gap = least_gap;
    return nothing(least_gap);
  }

  const Outline& outline_;
  std::span<const PackKind> kinds_;
  double wall_;
  packing::KindOrder order_;
  long all_work_, work_;
  bool any_place_ = false;
  double gap_ = 0.0;
  std::vector<std::size_t> counts_;
  Coordinates x_;
  Random random_{2027};
};

}  // namespace

Packing place_count(const Section& section, std::span<const PackKind> kinds, Millimetres least_gap,
                    Millimetres wall, Effort effort, Arrange arrange) {
  const Outline outline{section};
  return LargestGap{outline, kinds, wall.value(), effort, arrange}.solve(least_gap.value(),
                                                                         area_mm2(section));
}

}  // namespace bulbwright
