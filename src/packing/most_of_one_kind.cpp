#include <algorithm>
#include <cmath>
#include <optional>

#include "packing/answer.hpp"
#include "packing/choices.hpp"
#include "packing/lattice.hpp"
#include "packing/most.hpp"
#include "packing/packing.hpp"
#include "packing/rounding.hpp"
#include "packing/rows.hpp"
#include "packing/search.hpp"
#include "packing/seeds.hpp"

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

/// One question of pack_most for one kind, with the work left for it.
class MostBulbs {
 public:
  MostBulbs(const Outline& outline, const PackKind& kind, double gap, double wall, Effort effort,
            long work)
      : outline_{outline},
        kinds_{&kind, 1},
        gap_{gap},
        wall_{wall},
        effort_{effort},
        all_work_{work},
        work_{work} {}

  Packing solve() {
    const Bound bound = packing::bound_of(outline_, kinds_, gap_, wall_);
    if (bound.most > 0) climb(bound.most);
    Packing result = packing::packing_of(outline_, best_.bulbs, best_.grid, kinds_, gap_, wall_);
    result.upper_bound = bound.most;
    result.bound_name = bound.name;
    return result;
  }

 private:
  [[nodiscard]] KindDiscs bulbs(std::size_t n, double spare = 0.0) const {
    KindDiscs all =
        packing::discs_of(kinds_, packing::apportion(n, kinds_), gap_ + spare, wall_ - spare / 2.0);
    // discs_of puts half the spare gap into the reach only; the wall gets its half here.
    for (double& margin : all.discs.margin) margin += spare;
    return all;
  }

  /// Rounds and certifies; the best answer so far is replaced when it holds.
  bool keep(std::size_t n, const Coordinates& x, int tries) {
    KindDiscs all = bulbs(n);
    packing::Rounder rounder{outline_, all.discs};
    auto grid = rounder.round(x, tries, random_, std::max(work_, all_work_) / 10);
    work_ -= rounder.work();
    if (!grid) return false;
    best_ = {std::move(all), std::move(*grid)};
    return true;
  }

  /// Places for the start.
  void start() {
    const double spacing = kinds_.front().diameter.value() + gap_;
    const double margin = wall_ + kinds_.front().diameter.value() / 2.0;
    const int turns = effort_ == Effort::quick ? 6 : 24;
    const int offsets = effort_ == Effort::quick ? 4 : 12;
    // With some spare where it costs no bulb: such a lattice can be rounded.
    places_ = packing::best_lattice(outline_, spacing, margin, turns, offsets);
    printable_ = packing::printable_rows(outline_, spacing, margin);
    std::vector<Point> loose =
        packing::best_lattice(outline_, spacing + 0.15, margin + 0.075, turns / 2, offsets * 2 / 3);
    if (loose.size() > printable_.size()) printable_ = std::move(loose);
    if (printable_.size() >= places_.size() || printable_.size() > 150) places_ = printable_;
    if (places_.empty()) places_.push_back(outline_.deepest());
  }

  /// The widest hole among a few points drawn.
  [[nodiscard]] Point next_place(double margin) {
    Point best = outline_.deepest();
    double widest = -1.0;
    for (int k = 0; k < 40; ++k) {
      const Point p = packing::random_point(outline_, margin, random_);
      double room = 1e300;
      for (const Point q : places_) {
        room = std::min(room, (p.x - q.x) * (p.x - q.x) + (p.y - q.y) * (p.y - q.y));
      }
      if (room <= widest) continue;
      widest = room;
      best = p;
    }
    return best;
  }

  [[nodiscard]] Coordinates arranged(const KindDiscs& bulbs) {
    while (places_.size() < bulbs.kind.size()) {
      places_.push_back(next_place(bulbs.discs.margin.back()));
    }
    places_.resize(bulbs.kind.size());
    return packing::to_coordinates(places_);
  }

  /// Looks for n bulbs with `spare` and keeps the first layout that survives rounding.
  bool find(std::size_t n, double spare, long work) {
    const KindDiscs all = bulbs(n, spare);
    packing::Search search{outline_, all.discs, 1e-7, 0x5eed + n};
    bool fits = search.try_start(arranged(all));
    int failures = 0;
    while (true) {
      if (!fits) {
        fits = search.work() < work && search.run(work - search.work());
        if (!fits) break;
      }
      if (keep(n, search.layout(), packing::rounding_tries(effort_))) {
        places_ = packing::to_points(search.layout());
        work_ -= search.work();
        return true;
      }
      fits = false;
      if (++failures == 2 && spare <= 0.0) break;  // better to look for a looser layout
    }
    work_ -= search.work();
    return false;
  }

  /// The lattice itself, or, where rounding kills it, as many of its points as survive, or those
  /// of a lattice that needs no rounding: how many.
  std::size_t first_layout(std::size_t most) {
    const std::vector<Point> dense = places_;
    const auto holds = [&](std::size_t n) {
      places_ = dense;
      return keep(n, arranged(bulbs(n)), 3);
    };
    std::size_t high = std::min(most, dense.size());
    if (holds(high)) return high;
    std::size_t low = 0;
    if (!printable_.empty() && printable_.size() < high) {
      places_ = printable_;
      if (keep(printable_.size(), arranged(bulbs(printable_.size())), 3)) low = printable_.size();
    }
    while (high - low > 1) {
      const std::size_t middle = (low + high + 1) / 2;
      (holds(middle) ? low : high) = middle;
    }
    places_ = dense;
    places_.resize(std::max<std::size_t>(low, 1));
    return low;
  }

  void climb(std::size_t most) {
    start();
    std::size_t n = first_layout(most);
    while (n < most && work_ > 0) {
      const std::vector<Point> before = places_;
      if (!find(n + 1, 0.0, work_)) {
        if (work_ <= 0) break;
        places_ = before;
        if (!find(n + 1, packing::spare_for_rounding, work_)) break;
      }
      ++n;
    }
  }

  const Outline& outline_;
  std::span<const PackKind> kinds_;
  double gap_, wall_;
  Effort effort_;
  long all_work_, work_;
  Random random_{2026};
  std::vector<Point> places_;
  std::vector<Point> printable_;  ///< a lattice that surely survives rounding
  Certified best_;
};

}  // namespace

Packing packing::most_of_one(const Outline& outline, const PackKind& kind, double gap, double wall,
                             Effort effort, long work) {
  return MostBulbs{outline, kind, gap, wall, effort, work}.solve();
}

Packing pack_most(const Section& section, std::span<const PackKind> kinds, Millimetres gap,
                  Millimetres wall, Effort effort, Arrange arrange) {
  const Outline outline{section};
  // A plan of three layers asks three times: at normal effort they get a little less each.
  long work = packing::work_of(effort);
  if (kinds.size() == 1) {
    if (effort == Effort::normal) work = work * 7 / 10;
    return packing::most_of_one(outline, kinds.front(), gap.value(), wall.value(), effort, work);
  }
  if (effort == Effort::quick) work = work * 6 / 10;
  return packing::most_of_mixture(outline, kinds, gap.value(), wall.value(), effort, arrange, work);
}

}  // namespace bulbwright
