#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "packing/answer.hpp"
#include "packing/blocks.hpp"
#include "packing/fill.hpp"
#include "packing/hole.hpp"
#include "packing/lattice.hpp"
#include "packing/layout_search.hpp"
#include "packing/most.hpp"
#include "packing/polish.hpp"
#include "packing/rounding.hpp"
#include "packing/seeds.hpp"

namespace bulbwright::packing {
namespace {

/// A certified layout, and the one that was not rounded.
struct Mixed {
  KindDiscs bulbs;
  std::vector<GridPoint> grid;
  KindLayout layout;
  [[nodiscard]] std::size_t size() const { return grid.size(); }
};

/// Outlines are taken in sizes 1 % apart: what is found in one lies in every larger one too.
constexpr double sizes_to_a_doubling = 70.0;

/// Steps of the length and of the width under the outline's own.
struct SizeStep {
  int length, width;
};
constexpr std::array<SizeStep, 8> size_steps{
    {{0, 0}, {1, 0}, {0, 1}, {1, 1}, {2, 0}, {0, 2}, {2, 1}, {1, 2}}};
constexpr std::array<SizeStep, 4> round_steps{{{0, 0}, {1, 1}, {2, 2}, {3, 3}}};

/// The largest size that is no more than `length`, so many steps below.
Millimetres size_below(double length, int steps) {
  const double k = std::floor(std::log2(length) * sizes_to_a_doubling + 1e-7) - steps;
  return Millimetres{std::nearbyint(std::exp2(k / sizes_to_a_doubling) * 0x1.0p30) * 0x1.0p-30};
}

Section section_below(const Outline& outline, SizeStep step) {
  Section section{outline.shape(),
                  size_below(2.0 * outline.half_length(), step.length),
                  size_below(outline.top() - outline.bottom(), step.width),
                  {}};
  const double most = std::min(section.length, section.width).value() / 2.0;
  section.corner = Millimetres{std::min(outline.corner(), most)};
  return section;
}

/// Above so many bulbs, where one bulb is less than the steps, only the first three sizes.
constexpr std::size_t many_bulbs = 600;

/// Steps of work that one size is worth; a plan of three layers asks three times.
constexpr long work_of_a_size(Effort effort) {
  return effort == Effort::quick ? 600'000 : effort == Effort::normal ? 8'000'000 : 60'000'000;
}

/// Most work for spreading the kinds of the layout found, in that of a size.
constexpr long spreading_share = 20;
/// Bulbs changed over for it.
constexpr int spreading_swaps(Effort effort) {
  return effort == Effort::quick ? 80 : effort == Effort::normal ? 400 : 2000;
}

/// With so much to spare places in whole hundredths hold, mm.
constexpr double lattice_spare = 0.015;

const PackKind& largest_of(std::span<const PackKind> kinds) {
  return *std::max_element(kinds.begin(), kinds.end(), [](const PackKind& a, const PackKind& b) {
    return a.diameter < b.diameter;
  });
}

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

  /// The fullest layout found from simple ones and from `least`, which lies in the outline.
  Mixed solve(const Mixed& least) {
    most_ = bound_of(outline_, kinds_, gap_, wall_).most;
    if (most_ == 0) return {};
    start();
    if (least.size() > placed()) best_ = least;
    climb();
    return best_;
  }

  /// Plain blocks alone.
  Mixed blocks(std::size_t most) {
    most_ = most;
    in_blocks();
    return best_;
  }

  /// The layout with unlike kinds changed over where that leaves fewer like neighbours and the
  /// bulbs find room, as many still.
  Mixed spread_further(const Mixed& from, int swaps) {
    most_ = from.size();
    best_ = from;
    if (order_.arrange() == Arrange::drift || kinds_.size() < 2) return best_;
    double like = like_neighbours(best_.layout.x, best_.bulbs);
    long spent = 0;
    for (int k = 0; k < swaps && like > 0.0 && spent < all_work_ * spreading_share; ++k) {
      Coordinates x = best_.layout.x;
      if (!order_.swap_like(x, best_.bulbs, random_)) continue;
      const KindDiscs loose = bulbs(best_.size(), spare_for_rounding);
      spent += order_.spent();
      if (!polish_if_near(outline_, loose.discs, certified_overlap, x, spent)) continue;
      const double now = like_neighbours(x, best_.bulbs);
      if (now < like && keep(best_.size(), x, 2)) {
        like = like_neighbours(printed_coordinates(best_.grid), best_.bulbs);
      }
    }
    return best_;
  }

  /// The largest kind's own layout with the kinds spread over it: it has room for every kind.
  Mixed on_places_of(const Packing& alone, std::size_t most) {
    most_ = most;
    std::vector<Point> places;
    for (const PlacedBulb& bulb : alone.bulbs) places.push_back({bulb.x_mm, bulb.y_mm});
    on_places(places);
    return best_;
  }

 private:
  [[nodiscard]] KindDiscs bulbs(std::size_t n, double spare = 0.0) const {
    return spaced_discs(kinds_, apportion(n, kinds_), gap_, wall_, spare);
  }
  [[nodiscard]] std::size_t placed() const { return best_.size(); }

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
    best_ = {std::move(all), std::move(*grid), {x, apportion(n, kinds_)}};
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
      if (x.empty()) x = round % 4 < 2 ? grown(best_.layout, n) : fresh(all);
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
    const PackKind& largest = largest_of(kinds_);
    long filling = 0;
    if (order_.arrange() == Arrange::mixed) {
      for (const bool turned : {false, true}) fill(turned, filling);
    } else {
      in_blocks();
    }
    work_ -= filling;
    const double d = largest.diameter.value();
    on_places(best_lattice(outline_, d + gap_ + lattice_spare, wall_ + d / 2.0 + lattice_spare));
  }

  /// Plain blocks of rows, one a kind, as many bulbs as they hold.
  void in_blocks() {
    const Blocks blocks{outline_, kinds_, gap_ + lattice_spare, wall_ + lattice_spare};
    std::size_t step = std::max<std::size_t>(1, most_ / 4);
    for (std::size_t n = placed() + step; step > 0;) {
      const auto places = n <= most_ ? blocks.places(apportion(n, kinds_)) : std::nullopt;
      if (places && keep(n, to_coordinates(*places), 2)) {
        n += step;
      } else {
        n -= step;
        step /= 2;
        n += step;
      }
    }
  }

  void fill(bool turned, long& work) {
    // So that rounding breaks nothing, where repairs would take long.
    const double spare = most_ > many_bulbs ? lattice_spare : 0.0;
    const auto filled = [&](Spread spread) {
      return greedy_fill(outline_, kinds_, gap_ + spare, wall_ + spare, turned, spread, work);
    };
    for (const Spread spread : {Spread::groups, Spread::singles}) fall_back(filled(spread));
    // What a fill sets that need not spread its kinds is a goal for one that does.
    goal_ = std::max(goal_, std::min(filled(Spread::none).x.size() / 2, most_));
  }

  /// Kinds spread over places where each has room, or over as many as can be spread so.
  void on_places(std::vector<Point> places) {
    places.resize(std::min(places.size(), most_));
    while (places.size() > placed() && work_ > 0) {
      for (int k = 0; k < 5 && work_ > 0; ++k) {
        const KindDiscs all = bulbs(places.size());
        if (keep(places.size(), put_apart(arranged(places, all), all), 2)) return;
      }
      places.resize(places.size() - 1 - places.size() / 100);
    }
  }

  /// Clumps broken by changing kinds over, on the same places.
  Coordinates put_apart(Coordinates x, const KindDiscs& all) {
    if (order_.arrange() == Arrange::drift) return x;
    for (int k = 0; k < 20 && work_ > 0 && misplaced(x, all); ++k)
      x = order_.with_swap(std::move(x), all, random_);
    return x;
  }

  /// The fill, or as many of its bulbs as rounding and clumps leave, where that is more than
  /// before.
  void fall_back(const KindLayout& filled) {
    for (std::size_t n = std::min(filled.x.size() / 2, most_); n > placed(); n -= 1 + n / 100) {
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
  Mixed best_{{}, {}, {{}, std::vector<std::size_t>(kinds_.size(), 0)}};
};

}  // namespace

Packing most_of_mixture(const Outline& outline, std::span<const PackKind> kinds, double gap,
                        double wall, Effort effort, Arrange arrange) {
  const auto search = [&](const Outline& size, Effort each) {
    return MostMixed{size, kinds, gap, wall, arrange, each, work_of_a_size(each)};
  };
  const Bound bound = bound_of(outline, kinds, gap, wall);
  const PackKind& largest = largest_of(kinds);
  const std::size_t most_alone = bound_of(outline, {&largest, 1}, gap, wall).most;
  Mixed best;
  const std::vector<SizeStep> steps =
      outline.shape() == Shape::round
          ? std::vector<SizeStep>{round_steps.begin(), round_steps.end()}
          : std::vector<SizeStep>{size_steps.begin(), size_steps.end()};
  const std::size_t sizes = bound.most > many_bulbs ? 3 : steps.size();
  // A greater effort goes on from what the lesser one finds in each size.
  std::vector<Mixed> found(steps.size());
  for (const Effort each : {Effort::quick, Effort::normal, Effort::thorough}) {
    if (each > effort || bound.most == 0) break;
    for (std::size_t k = 0; k < sizes; ++k) {
      const Outline size{section_below(outline, steps[k])};
      found[k] = search(size, each).solve(found[k]);
      if (found[k].size() > best.size()) best = found[k];
    }
    if (each == Effort::quick && arrange == Arrange::drift) {
      Mixed blocks = search(outline, each).blocks(bound.most);
      if (blocks.size() > best.size()) best = std::move(blocks);
    }
    if (most_alone <= best.size()) continue;
    const Packing alone = most_of_one(outline, largest, gap, wall, each);
    if (alone.bulbs.size() > best.size()) {
      Mixed on_places = search(outline, each).on_places_of(alone, bound.most);
      if (on_places.size() > best.size()) best = std::move(on_places);
    }
  }
  if (best.size() > 1) {
    best = search(outline, effort).spread_further(best, spreading_swaps(effort));
  }
  Packing result = packing_of(outline, best.bulbs, best.grid, kinds, gap, wall);
  result.upper_bound = bound.most;
  result.bound_name = bound.name;
  return result;
}

}  // namespace bulbwright::packing
