#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

#include "packing/answer.hpp"
#include "packing/choices.hpp"
#include "packing/lattice.hpp"
#include "packing/layout_search.hpp"
#include "packing/most.hpp"
#include "packing/packing.hpp"
#include "packing/polish.hpp"
#include "packing/round_table.hpp"
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

/// So many bulbs more are tried, for a gap no narrower than theirs.
constexpr int more_bulbs = 2;

/// Two or three bulbs stand in a row where that leaves this share of an even spread's distance.
constexpr double nearly_even = 0.9;

/// One question of place_count: the largest gap for given bulbs.
class LargestGap {
 public:
  LargestGap(const Outline& outline, std::span<const PackKind> kinds, double wall, Effort effort,
             Arrange arrange)
      : outline_{outline},
        kinds_{kinds},
        wall_{wall},
        order_{arrange},
        effort_{effort},
        all_work_{packing::work_of(effort)},
        work_{all_work_} {
    for (const PackKind& kind : kinds) counts_.push_back(static_cast<std::size_t>(kind.count));
  }

  /// `never_refuse`: where the search finds nothing the densest layout with bulbs taken out stands
  /// in, at the least gap; of no use to who looks for a wider one.
  Packing solve(double least_gap, double area, bool never_refuse) {
    Packing result = nothing(least_gap);
    const packing::Bound at_least = packing::bound_of(outline_, kinds_, least_gap, wall_);
    result.upper_bound = at_least.most;
    result.bound_name = at_least.name;
    if (at_least.most < all_bulbs()) return result;  // proven: no search would find a layout
    // Where an even spread would be tighter than the least gap only that is left to try.
    const double most = std::max(least_gap, even_gap(area));
    double gap = least_gap;
    if (in_a_row(most) || from_table(least_gap, most) || widen(least_gap, most)) {
      result = printed(least_gap, gap);
    }
    if (result.bulbs.empty() && never_refuse) result = thinned(least_gap, gap);
    const packing::Bound bound = packing::bound_of(outline_, kinds_, gap, wall_);
    result.upper_bound = std::max(bound.most, result.bulbs.size());
    result.bound_name = bound.name;
    return result;
  }

 private:
  [[nodiscard]] KindDiscs bulbs(double gap, double inset) const {
    return packing::discs_of(kinds_, counts_, gap, wall_ + inset);
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

  [[nodiscard]] std::size_t all_bulbs() const {
    return std::accumulate(counts_.begin(), counts_.end(), std::size_t{0});
  }

  /// A row along the longer axis, each bulb in the middle of its share of the length: where its gap
  /// is (for two or three bulbs nearly) what an even spread over the section would leave.
  bool in_a_row(double even) {
    const std::size_t n = all_bulbs();
    if (kinds_.size() > 1 || n < 2) return false;
    const double length = 2.0 * outline_.half_length(), width = outline_.top() - outline_.bottom();
    const bool upright = width > length && outline_.shape() != Shape::half_round;
    const double each = (upright ? width : length) / static_cast<double>(n);
    const double d = kinds_.front().diameter.value();
    if (each < (n <= 3 ? nearly_even : 1.0) * (even + d)) return false;
    Coordinates x(2 * n, 0.0);
    for (std::size_t i = 0; i < n; ++i) {
      const double along = each * (static_cast<double>(i) - (static_cast<double>(n) - 1.0) / 2.0);
      x[i] = upright ? 0.0 : along;
      x[n + i] = upright ? along : outline_.deepest().y;
    }
    if (!holds(x, each - d)) return false;
    x_ = std::move(x);
    gap_ = each - d;
    return true;
  }

  [[nodiscard]] bool holds(const Coordinates& x, double gap) const {
    return packing::violation(outline_, bulbs(gap, 0.0).discs, x) <= 1e-12;
  }

  /// A round section of one kind: the table's layout, as wide as it goes.
  bool from_table(double least, double most) {
    const std::size_t n = all_bulbs();
    if (kinds_.size() > 1 || outline_.shape() != Shape::round || n < 2 ||
        n > packing::round_table_size()) {
      return false;
    }
    const double d = kinds_.front().diameter.value();
    const double room = outline_.half_length() - wall_ - d / 2.0;
    const double widest =
        2.0 * room / (packing::round_table_ratio(n) - 1.0) - d - packing::certified_overlap;
    if (widest < least) return false;
    std::vector<Point> places = packing::round_table_layout(n);
    for (Point& p : places) p = {room * p.x, room * p.y};
    x_ = packing::to_coordinates(places);
    gap_ = std::min(most, widest);
    if (!fit(gap_, 0.0, 0)) {
      x_ = packing::to_coordinates(places);
      const KindDiscs all = bulbs(gap_, 0.0);
      if (!packing::polish(outline_, all.discs, packing::certified_overlap, x_)) {
        x_.clear();
        return false;
      }
    }
    if (gap_ >= most) draw_inwards();
    return true;
  }

  /// As many of the bulbs of the densest layout at the least gap: what else is found never makes a
  /// layout that exists a refusal.
  Packing thinned(double least_gap, double& gap) {
    const std::size_t n = all_bulbs();
    // A refusal is worth more than a quick look.
    const Effort effort = std::max(effort_, Effort::normal);
    Packing dense = kinds_.size() > 1
                        ? packing::most_of_mixture(outline_, kinds_by_count(), least_gap, wall_,
                                                   effort, order_.arrange())
                        : packing::most_of_one(outline_, kinds_.front(), least_gap, wall_, effort);
    std::vector<std::size_t> left = counts_;
    std::vector<PlacedBulb> kept;
    for (const PlacedBulb& bulb : dense.bulbs) {
      if (left[bulb.kind] == 0) continue;
      --left[bulb.kind];
      kept.push_back(bulb);
    }
    gap = least_gap;
    if (kept.size() < n) return nothing(least_gap);
    // Measured anew: the distances of bulbs left out are none of this layout's.
    KindDiscs all;
    std::vector<packing::GridPoint> layout;
    for (const PlacedBulb& bulb : kept) {
      all.kind.push_back(bulb.kind);
      layout.push_back({std::llround(bulb.x_mm * packing::units_per_mm),
                        std::llround(bulb.y_mm * packing::units_per_mm)});
    }
    return packing::packing_of(outline_, all, layout, kinds_, least_gap, wall_);
  }

  [[nodiscard]] std::vector<PackKind> kinds_by_count() const {
    std::vector<PackKind> all{kinds_.begin(), kinds_.end()};
    for (PackKind& kind : all) kind.share = kind.count;
    return all;
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
    centre();
  }

  /// Moves the layout to the middle, where it holds there too.
  void centre() {
    const auto half = x_.begin() + static_cast<std::ptrdiff_t>(x_.size() / 2);
    const auto middle = [](auto from, auto to) {
      const auto [low, high] = std::minmax_element(from, to);
      return (*low + *high) / 2.0;
    };
    Coordinates moved = x_;
    const auto n = static_cast<std::ptrdiff_t>(x_.size() / 2);
    const double by_x = middle(x_.begin(), half), by_y = middle(half, x_.end());
    const bool flat = outline_.shape() == Shape::half_round;  // its own middle is not up there
    for (std::ptrdiff_t i = 0; i < n; ++i) {
      moved[static_cast<std::size_t>(i)] -= by_x;
      if (!flat) moved[static_cast<std::size_t>(n + i)] -= by_y;
    }
    if (packing::violation(outline_, bulbs(gap_, 0.0).discs, moved) <= 1e-9) x_ = std::move(moved);
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
  Effort effort_;
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
  const auto placed = [&](std::span<const PackKind> asked, bool never_refuse) {
    return LargestGap{outline, asked, wall.value(), effort, arrange}.solve(
        least_gap.value(), area_mm2(section), never_refuse);
  };
  Packing best = placed(kinds, true);
  if (kinds.size() > 1 || best.bulbs.empty()) return best;
  // What a few more bulbs leave, these leave too.
  const std::size_t n = best.bulbs.size();
  for (int more = 1; more <= more_bulbs && n > 1; ++more) {
    PackKind kind = kinds.front();
    kind.count += more;
    Packing denser = placed({&kind, 1}, false);
    if (denser.bulbs.empty() || denser.gap <= best.gap) continue;
    denser.bulbs.resize(n);
    denser.upper_bound = std::max(n, upper_bound(section, kinds, denser.gap, wall).most);
    best = std::move(denser);
  }
  return best;
}

}  // namespace bulbwright
