#include <algorithm>
#include <cmath>

#include "packing/answer.hpp"
#include "packing/fill.hpp"
#include "packing/hole.hpp"
#include "packing/layout_search.hpp"
#include "packing/most.hpp"
#include "packing/rounding.hpp"
#include "packing/seeds.hpp"

namespace bulbwright::packing {
namespace {

/// One question of pack_most for several kinds: from the fullest of a few simple fills upwards.
class MostMixed {
 public:
  MostMixed(const Outline& outline, std::span<const PackKind> kinds, double gap, double wall,
            Arrange arrange, Effort effort, long work)
      : outline_{outline},
        kinds_{kinds},
        gap_{gap},
        wall_{wall},
        order_{arrange},
        effort_{effort},
        all_work_{work},
        work_{work} {}

  Packing solve() {
    const Bound bound = bound_of(outline_, kinds_, gap_, wall_);
    most_ = bound.most;
    if (most_ > 0) {
      start();
      climb();
    }
    Packing result = packing_of(outline_, best_, grid_, kinds_, gap_, wall_);
    result.upper_bound = bound.most;
    result.bound_name = bound.name;
    return result;
  }

 private:
  [[nodiscard]] KindDiscs bulbs(std::size_t n, double spare = 0.0) const {
    return spaced_discs(kinds_, apportion(n, kinds_), gap_, wall_, spare);
  }
  [[nodiscard]] std::size_t placed() const { return grid_.size(); }

  [[nodiscard]] bool misplaced(const Coordinates& x, const KindDiscs& all) {
    const bool out = order_.out_of_place(x, all);
    work_ -= order_.spent();
    return out;
  }

  /// Rounds and certifies; the best answer so far is replaced when it holds.
  bool keep(std::size_t n, const Coordinates& x, int tries) {
    KindDiscs all = bulbs(n);
    if (misplaced(x, all)) return false;
    Rounder rounder{outline_, all.discs};
    auto grid = rounder.round(x, tries, random_, std::max(work_, all_work_) / 10);
    work_ -= rounder.work();
    if (!grid || misplaced(printed_coordinates(*grid), all)) return false;
    best_ = std::move(all);
    grid_ = std::move(*grid);
    layout_ = {x, apportion(n, kinds_)};
    return true;
  }

  /// The widest hole for a disc of this kind among a few points drawn.
  Point hole(const std::vector<Point>& taken, const std::vector<std::size_t>& kind, double radius) {
    const Point best = widest_hole(outline_, wall_ + radius, 60, random_, [&](Point p) {
      double room = 1e300;
      for (std::size_t i = 0; i < taken.size(); ++i) {
        const double dx = p.x - taken[i].x, dy = p.y - taken[i].y;
        const double other = kinds_[kind[i]].diameter.value() / 2.0;
        room = std::min(room, std::sqrt(dx * dx + dy * dy) - other);
      }
      return room;
    });
    work_ -= 30 * static_cast<long>(taken.size());
    return best;
  }

  /// The layout with its counts made those of n: places given up by one kind are taken by another,
  /// the rest come out of holes, largest kinds first.
  Coordinates grown(const KindLayout& from, std::size_t n) {
    const std::vector<std::size_t> wanted = apportion(n, kinds_);
    const std::size_t before = from.x.size() / 2;
    std::vector<std::vector<Point>> by_kind(kinds_.size());
    std::vector<Point> taken, spare;
    std::vector<std::size_t> kind;
    for (std::size_t k = 0, at = 0; k < kinds_.size(); ++k) {
      for (std::size_t i = 0; i < from.counts[k]; ++i, ++at) {
        const Point p{from.x[at], from.x[before + at]};
        if (i >= wanted[k]) {
          spare.push_back(p);
          continue;
        }
        by_kind[k].push_back(p);
        taken.push_back(p);
        kind.push_back(k);
      }
    }
    std::vector<std::size_t> order(kinds_.size());
    for (std::size_t k = 0; k < order.size(); ++k) order[k] = k;
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
      return kinds_[a].diameter > kinds_[b].diameter;
    });
    for (const std::size_t k : order) {
      while (by_kind[k].size() < wanted[k]) {
        Point p;
        if (spare.empty()) {
          p = hole(taken, kind, kinds_[k].diameter.value() / 2.0);
        } else {
          p = spare.back();
          spare.pop_back();
        }
        by_kind[k].push_back(p);
        taken.push_back(p);
        kind.push_back(k);
      }
    }
    std::vector<Point> all;
    for (const auto& points : by_kind) all.insert(all.end(), points.begin(), points.end());
    return to_coordinates(all);
  }

  /// Kinds on places, spread or in bands.
  Coordinates arranged(const std::vector<Point>& places, const KindDiscs& bulbs) {
    std::vector<Point> ordered;
    for (const std::size_t place : order_.arranged(places, bulbs.kind, random_)) {
      ordered.push_back(places[place]);
    }
    work_ -= order_.spent();
    return to_coordinates(ordered);
  }

  /// A layout of n made afresh: a lattice fine enough, kinds spread over it.
  Coordinates fresh(const KindDiscs& all) {
    const std::size_t n = all.kind.size();
    double square = 0.0, margin = 0.0;
    for (std::size_t i = 0; i < n; ++i) {
      square += all.discs.reach[i] * all.discs.reach[i];
      margin += all.discs.margin[i];
    }
    const double spacing = 2.0 * std::sqrt(square / static_cast<double>(n));
    return arranged(lattice_seed(outline_, n, spacing, margin / static_cast<double>(n), random_),
                    all);
  }

  /// A layout of n made afresh: the largest scarce kind as far apart as keeps it from touching, the
  /// others in the holes. Empty where there is no such kind or no room.
  Coordinates fresh_skeleton(std::size_t n) {
    const std::vector<std::size_t> counts = apportion(n, kinds_);
    std::size_t first = kinds_.size();
    for (std::size_t k = 0; k < kinds_.size(); ++k) {
      if (counts[k] == 0 || 3 * counts[k] > n) continue;
      if (first == kinds_.size() || kinds_[k].diameter > kinds_[first].diameter) first = k;
    }
    if (first == kinds_.size()) return {};
    const double d = kinds_[first].diameter.value(), margin = wall_ + d / 2.0;
    const Discs apart = equal_discs(counts[first], 1.22 * (d + gap_), margin);
    LayoutSearch search{outline_, apart, 1e-4, random_.bits()};
    const bool fits = search.run(all_work_ / 40);
    work_ -= search.work();
    if (!fits) return {};
    KindLayout skeleton{search.layout(), std::vector<std::size_t>(kinds_.size(), 0)};
    skeleton.counts[first] = counts[first];
    return grown(skeleton, n);
  }

  /// Relaxes a layout and hops for at most `work`; empty where none fits.
  Coordinates settled(const Discs& discs, Coordinates x, long work) {
    LayoutSearch search{outline_, discs, 1e-7, random_.bits()};
    const bool fits = search.try_start(std::move(x)) ||
                      (search.work() < work && search.run(work - search.work()));
    work_ -= search.work();
    return fits ? search.layout() : Coordinates{};
  }

  /// A layout that fits with its clumps broken by swaps, or its bands restored, as far as it goes.
  Coordinates put_right(Coordinates x, const KindDiscs& all) {
    if (order_.arrange() == Arrange::drift) return banded(std::move(x), all);
    for (int k = 0; k < 10 && work_ > 0 && misplaced(x, all); ++k) {
      Coordinates other = settled(all.discs, order_.with_swap(x, all, random_), 0);
      if (!other.empty() &&
          order_.clump_members(other, all).size() <= order_.clump_members(x, all).size()) {
        x = std::move(other);
      }
      work_ -= order_.spent();
    }
    return x;
  }

  /// Looks for n bulbs from the layout so far and from fresh ones.
  bool find(std::size_t n, long work) {
    const KindDiscs all = bulbs(n);
    const long end = work_ - work, slice = std::max(work / 4, 40'000L);
    for (int round = 0; work_ > end; ++round) {
      const bool drift = order_.arrange() == Arrange::drift;
      Coordinates x = round % 4 == 0 && !drift ? fresh_skeleton(n) : Coordinates{};
      if (x.empty()) x = round % 4 < 2 ? grown(layout_, n) : fresh(all);
      // Hops carry bulbs of unlike sizes out of their bands: first without.
      const long hops = drift && round % 4 != 3 ? 0 : std::min(slice, work_ - end);
      x = settled(all.discs, std::move(x), hops);
      if (x.empty()) continue;
      x = put_right(std::move(x), all);
      if (keep(n, x, rounding_tries(effort_))) return true;
      if (misplaced(x, all) || work_ <= end) continue;
      x = settled(bulbs(n, spare_for_rounding).discs, std::move(x), drift ? 0 : slice / 2);
      if (!x.empty() && keep(n, x, rounding_tries(effort_))) return true;
    }
    return false;
  }

  void start() {
    const auto largest = std::max_element(
        kinds_.begin(), kinds_.end(),
        [](const PackKind& a, const PackKind& b) { return a.diameter < b.diameter; });
    long filling = 0;
    if (order_.arrange() == Arrange::mixed) {
      for (const bool turned : {false, true}) fill(turned, filling);
    }
    work_ -= filling + all_work_ / 8;
    const std::size_t alone = on_places_of(*largest, all_work_ / 8);
    // Where the smaller kinds win little, the places of the largest are worth a full search.
    if (placed() <= alone + 2) on_places_of(*largest, all_work_);
  }

  void fill(bool turned, long& work) {
    const auto filled = [&](Spread spread) {
      return greedy_fill(outline_, kinds_, gap_, wall_, turned, spread, work);
    };
    for (const Spread spread : {Spread::groups, Spread::singles}) fall_back(filled(spread));
    // What a fill sets that need not spread its kinds is a goal for one that does.
    goal_ = std::max(goal_, std::min(filled(Spread::none).x.size() / 2, most_));
  }

  /// Every kind has room where the largest has: its own layout with the kinds spread over it.
  std::size_t on_places_of(const PackKind& largest, long work) {
    const Packing alone = most_of_one(outline_, largest, gap_, wall_, effort_, work);
    std::vector<Point> places;
    for (const PlacedBulb& bulb : alone.bulbs) places.push_back({bulb.x_mm, bulb.y_mm});
    const std::size_t n = std::min(places.size(), most_);
    places.resize(n);
    for (int k = 0; k < 5 && placed() < n; ++k) keep(n, arranged(places, bulbs(n)), 2);
    return n;
  }

  /// The fill, or as many of its bulbs as rounding and clumps leave, where that is more than
  /// before.
  void fall_back(const KindLayout& filled) {
    for (std::size_t n = std::min(filled.x.size() / 2, most_); n > placed(); --n) {
      if (keep(n, grown(filled, n), 2)) break;
    }
  }

  void climb() {
    if (goal_ > placed()) {
      const long work = std::max(all_work_ / 3, 20'000L * static_cast<long>(goal_));
      work_ += work;
      find(goal_, work);
    }
    std::size_t step = std::max<std::size_t>(1, placed() / 16);
    while (placed() < most_ && work_ > 0) {
      if (find(std::min(most_, placed() + step), step > 1 ? all_work_ / 8 : work_)) continue;
      if (step > 1) step /= 2;
    }
  }

  const Outline& outline_;
  std::span<const PackKind> kinds_;
  double gap_, wall_;
  KindOrder order_;
  Effort effort_;
  long all_work_, work_;
  std::size_t most_ = 0, goal_ = 0;
  Random random_{2026};
  KindLayout layout_{{}, std::vector<std::size_t>(kinds_.size(), 0)};  ///< not rounded
  KindDiscs best_;
  std::vector<GridPoint> grid_;
};

}  // namespace

Packing most_of_mixture(const Outline& outline, std::span<const PackKind> kinds, double gap,
                        double wall, Effort effort, Arrange arrange, long work) {
  return MostMixed{outline, kinds, gap, wall, arrange, effort, work}.solve();
}

}  // namespace bulbwright::packing
