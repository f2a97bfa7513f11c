#include <algorithm>
#include <cmath>
#include <optional>

#include "packing/answer.hpp"
#include "packing/choices.hpp"
#include "packing/hole.hpp"
#include "packing/lattice.hpp"
#include "packing/layout_search.hpp"
#include "packing/most.hpp"
#include "packing/packing.hpp"
#include "packing/polish.hpp"
#include "packing/round_table.hpp"
#include "packing/rounding.hpp"
#include "packing/rows.hpp"
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

/// Overlap that a layout to be rounded may have, mm.
constexpr double certified_overlap = 1e-4;

/// The search is fruitless where its best layout misses by more than this share of the spacing
/// after so many times the work of one minimum of so many discs.
constexpr double hopeless_from = 4e-3;
constexpr long work_of_a_minimum = 1200;  ///< a disc
constexpr long minima_before_hopeless = 60;

/// Points of lattices looked at for a start.
constexpr double lattice_points = 60'000.0;

/// How much a lattice may be widened so that it surely survives rounding, mm.
constexpr double printable_spare = 1.5 / packing::units_per_mm;

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
        spacing_{kind.diameter.value() + gap},
        margin_{wall + kind.diameter.value() / 2.0},
        effort_{effort},
        all_work_{work},
        work_{work} {}

  Packing solve() {
    const Bound bound = packing::bound_of(outline_, kinds_, gap_, wall_);
    if (bound.most > 0) place(bound.most);
    Packing result = packing::packing_of(outline_, best_.bulbs, best_.grid, kinds_, gap_, wall_);
    result.upper_bound = bound.most;
    result.bound_name = bound.name;
    return result;
  }

 private:
  [[nodiscard]] KindDiscs bulbs(std::size_t n, double spare = 0.0) const {
    return packing::spaced_discs(kinds_, {n}, gap_, wall_, spare);
  }
  [[nodiscard]] std::size_t placed() const { return best_.grid.size(); }

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

  void place(std::size_t most) {
    start();
    first_layout(most);
    if (outline_.shape() == Shape::round && look_up(most)) return;
    climb(most);
  }

  /// Places for the start.
  void start() {
    const double points =
        std::max(1.0, static_cast<double>(packing::most_points(outline_, spacing_, margin_).most));
    const double starts = lattice_points / points;
    const int turns = outline_.shape() == Shape::round
                          ? 1
                          : std::clamp(static_cast<int>(std::sqrt(starts) / 3.0), 2, 12) * 2;
    const int offsets = std::clamp(static_cast<int>(std::sqrt(2.0 * starts / turns)), 2, 12);
    places_ = packing::best_lattice(outline_, spacing_, margin_, turns, offsets);
    printable_ = packing::printable_rows(outline_, spacing_, margin_);
    // With some spare where it costs no bulb: such a lattice can be rounded.
    std::vector<Point> loose = packing::best_lattice(
        outline_, spacing_ + printable_spare, margin_ + printable_spare / 2.0, turns, offsets);
    if (loose.size() > printable_.size()) printable_ = std::move(loose);
    if (printable_.size() >= places_.size()) places_ = printable_;
    if (places_.empty()) places_.push_back(outline_.deepest());
  }

  /// The table's layout for a round section. True where it is the last word: the table goes on, and
  /// no more is known to fit.
  bool look_up(std::size_t most) {
    const double room = std::max(0.0, outline_.half_length() - margin_);
    const double ratio = (1.0 + 2.0 * room / spacing_) * (1.0 + 2e-9);
    const std::size_t known = packing::round_table_count(ratio);
    for (std::size_t n = std::min(known, most); n > placed(); --n) {
      if (keep_known(n, room)) break;
    }
    return known < packing::round_table_size();
  }

  bool keep_known(std::size_t n, double room) {
    std::vector<Point> points = packing::round_table_layout(n);
    // Shrunk so that walls are as much too far as neighbours.
    const double spread = 2.0 / std::max(1e-9, packing::round_table_ratio(n) - 1.0);
    const double spare = n < 2 ? room : std::max(0.0, (room * spread - spacing_) / (1.0 + spread));
    for (Point& p : points) p = {p.x * (room - spare), p.y * (room - spare)};
    Coordinates x = packing::to_coordinates(points);
    const KindDiscs all = bulbs(n);
    if (spare < 2.0 * printable_spare &&
        !packing::polish(outline_, all.discs, certified_overlap, x, work_spent_)) {
      return false;
    }
    if (!keep(n, x, packing::rounding_tries(Effort::thorough))) return false;
    places_ = points;
    return true;
  }

  [[nodiscard]] Point next_place() {
    work_ -= 40 * static_cast<long>(places_.size());
    return packing::widest_hole(outline_, margin_, 40, random_, [&](Point p) {
      double room = 1e300;
      for (const Point q : places_) {
        room = std::min(room, (p.x - q.x) * (p.x - q.x) + (p.y - q.y) * (p.y - q.y));
      }
      return room;
    });
  }

  [[nodiscard]] Coordinates arranged(const KindDiscs& bulbs) {
    while (places_.size() < bulbs.kind.size()) places_.push_back(next_place());
    places_.resize(bulbs.kind.size());
    return packing::to_coordinates(places_);
  }

  /// Looks for n bulbs with `spare` and keeps the first layout that survives rounding.
  bool find(std::size_t n, double spare, long work) {
    const KindDiscs all = bulbs(n, spare);
    packing::LayoutSearch search{outline_, all.discs, 1e-7, 0x5eed + n};
    bool fits = search.try_start(arranged(all));
    int failures = 0;
    const long enough = minima_before_hopeless * work_of_a_minimum * static_cast<long>(n);
    while (true) {
      while (!fits && search.work() < work) {
        fits = search.run(std::min(work - search.work(), enough));
        if (!fits && search.touching() < -hopeless_from * spacing_) break;
      }
      if (!fits) break;
      if (keep(n, search.layout(), packing::rounding_tries(effort_))) {
        places_ = packing::to_points(search.layout());
        work_ -= search.work();
        return true;
      }
      fits = false;
      if (++failures == 2 && spare <= 0.0) break;  // better to look for a looser layout
    }
    work_ -= search.work();
    near_miss_ = search.touching() > -hopeless_from * spacing_;
    return false;
  }

  /// The lattice itself, or, where rounding kills it, as many of its points as survive, or those
  /// of a lattice that needs no rounding.
  void first_layout(std::size_t most) {
    const std::vector<Point> dense = places_;
    const auto holds = [&](std::size_t n) {
      places_ = dense;
      return keep(n, arranged(bulbs(n)), 3);
    };
    std::size_t high = std::min(most, dense.size());
    if (holds(high)) return;
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
  }

  bool find_any(std::size_t n, long work) {
    const std::vector<Point> before = places_;
    if (find(n, 0.0, work)) return true;
    const bool near = near_miss_;
    places_ = before;
    if (work_ > 0 && near && find(n, packing::spare_for_rounding, work / 2)) return true;
    places_ = before;
    return false;
  }

  /// In steps that double while they succeed and halve when they fail, each with a share of the
  /// work; what is left goes to the last number undecided.
  void climb(std::size_t most) {
    std::size_t step = std::max<std::size_t>(1, placed() / 50);
    while (placed() < most && work_ > 0) {
      const std::size_t n = std::min(most, placed() + step);
      const long work = n > placed() + 1 ? all_work_ / 16 : work_;
      if (find_any(n, work)) {
        step *= 2;
      } else if (n == placed() + 1) {
        break;
      } else {
        step = (n - placed()) / 2;
      }
    }
  }

  const Outline& outline_;
  std::span<const PackKind> kinds_;
  double gap_, wall_, spacing_, margin_;
  Effort effort_;
  long all_work_, work_;
  long work_spent_ = 0;
  bool near_miss_ = false;
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
