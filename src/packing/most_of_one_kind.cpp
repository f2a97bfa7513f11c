#include <algorithm>
#include <cmath>
#include <optional>

#include "packing/answer.hpp"
#include "packing/choices.hpp"
#include "packing/lattice.hpp"
#include "packing/most.hpp"
#include "packing/packing.hpp"
#include "packing/polish.hpp"
#include "packing/round_table.hpp"
#include "packing/rounding.hpp"
#include "packing/rows.hpp"
#include "packing/seeds.hpp"
#include "packing/standard_search.hpp"

namespace bulbwright {
namespace {

using packing::Bound;
using packing::Coordinates;
using packing::GridPoint;
using packing::KindDiscs;
using packing::Outline;
using packing::Point;
using packing::Random;

/// Work of one search in a standard outline: so much a place, up to a most.
struct SearchWork {
  long a_place = 0, most = 0;
  [[nodiscard]] long of(std::size_t n) const {
    return std::min(most, a_place * static_cast<long>(n));
  }
};
constexpr SearchWork search_work(Effort effort) {
  if (effort == Effort::quick) return {45'000, 3'000'000};
  return effort == Effort::normal ? SearchWork{200'000, 12'000'000}
                                  : SearchWork{1'200'000, 80'000'000};
}

/// Up to so many bulbs better layouts than lattices are looked for.
constexpr std::size_t most_searched(Effort effort) {
  return effort == Effort::quick ? 200 : effort == Effort::normal ? 300 : 500;
}

/// Layouts whose spacing falls short by more than this share are not worth polishing: the outline
/// asked for is larger than the standard one by no more than about as much. Of a few bulbs the
/// margin is a great part of the outline, and so its step.
double worth_polishing(std::size_t n) {
  return 0.025 + 0.15 / static_cast<double>(n);
}

/// Of so few bulbs a layout is polished however far off it seems.
constexpr std::size_t few_bulbs = 30;

/// Spare with which rounding to 0.01 mm breaks nothing.
constexpr double rounds_freely = 0.02;

/// Overlap of a layout to be printed in millionths, mm.
constexpr double finely_overlapping = 1e-7;

constexpr long work_of_rounding = 200'000;  ///< the same at every effort
constexpr int tries_each = 12;              ///< of rounding one layout

/// How much a lattice may be widened so that it surely survives rounding, mm.
constexpr double printable_spare = 1.5 / packing::units_per_mm;

/// A layout that is certified as printed.
struct Certified {
  KindDiscs bulbs;
  std::vector<GridPoint> grid;
  Coordinates fine = {};  ///< in place of `grid` where no whole hundredths hold
};

/// One question of pack_most for one kind.
class MostBulbs {
 public:
  MostBulbs(const Outline& outline, const PackKind& kind, double gap, double wall, Effort effort)
      : outline_{outline},
        kinds_{&kind, 1},
        gap_{gap},
        wall_{wall},
        spacing_{kind.diameter.value() + gap},
        margin_{wall + kind.diameter.value() / 2.0},
        effort_{effort} {}

  Packing solve() {
    const Bound bound = packing::bound_of(outline_, kinds_, gap_, wall_);
    if (bound.most > 0) place(bound.most);
    Packing result =
        best_.fine.empty()
            ? packing::packing_of(outline_, best_.bulbs, best_.grid, kinds_, gap_, wall_)
            : packing::packing_of(outline_, best_.bulbs, best_.fine, kinds_, gap_, wall_);
    result.upper_bound = bound.most;
    result.bound_name = bound.name;
    return result;
  }

 private:
  [[nodiscard]] KindDiscs bulbs(std::size_t n, double spare = 0.0) const {
    return packing::spaced_discs(kinds_, {n}, gap_, wall_, spare);
  }
  [[nodiscard]] std::size_t placed() const { return best_.bulbs.kind.size(); }

  /// Rounds and certifies; the best answer so far is replaced when it holds.
  bool keep(std::size_t n, const Coordinates& x, int tries) {
    KindDiscs all = bulbs(n);
    packing::Rounder rounder{outline_, all.discs};
    auto grid = rounder.round(x, tries, random_, work_of_rounding);
    if (!grid) return false;
    best_ = {std::move(all), std::move(*grid)};
    return true;
  }

  void place(std::size_t most) {
    start();
    first_layout(most);
    if (outline_.shape() == Shape::round && look_up(most)) return;
    look_in_standards(most);
  }

  /// Places for the start.
  void start() {
    places_ = packing::best_lattice(outline_, spacing_, margin_);
    printable_ = packing::printable_rows(outline_, spacing_, margin_);
    // With some spare where it costs no bulb: such a lattice can be rounded.
    std::vector<Point> loose = packing::best_lattice(outline_, spacing_ + printable_spare,
                                                     margin_ + printable_spare / 2.0);
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
        !packing::polish(outline_, all.discs, packing::certified_overlap, x)) {
      return false;
    }
    return keep(n, x, packing::rounding_tries(Effort::thorough)) || keep_finely(n, std::move(x));
  }

  /// A layout in which nothing can move, to the millionth.
  bool keep_finely(std::size_t n, Coordinates x) {
    KindDiscs all = bulbs(n);
    if (!packing::polish(outline_, all.discs, finely_overlapping, x)) return false;
    x = packing::finely_rounded(std::move(x));
    if (!packing::holds_finely(outline_, all.discs, x)) return false;
    best_ = {std::move(all), {}, std::move(x)};
    return true;
  }

  [[nodiscard]] Coordinates arranged(std::size_t n) {
    places_.resize(n);
    return packing::to_coordinates(places_);
  }

  /// The lattice itself, or, where rounding kills it, as many of its points as survive, or those
  /// of a lattice that needs no rounding.
  void first_layout(std::size_t most) {
    const std::vector<Point> dense = places_;
    const auto holds = [&](std::size_t n) {
      places_ = dense;
      return keep(n, arranged(n), 3);
    };
    std::size_t high = std::min(most, dense.size());
    if (holds(high)) return;
    std::size_t low = 0;
    if (!printable_.empty() && printable_.size() < high) {
      places_ = printable_;
      if (keep(printable_.size(), arranged(printable_.size()), 3)) low = printable_.size();
    }
    while (high - low > 1) {
      const std::size_t middle = (low + high + 1) / 2;
      (holds(middle) ? low : high) = middle;
    }
  }

  /// Layouts of more bulbs in the standard outlines that lie within this one, one bulb more at a
  /// time, until none of them has one. A greater effort goes on from what the lesser one finds.
  void look_in_standards(std::size_t most) {
    const std::vector<packing::Nested> standards = packing::nested_standards(outline_, margin_);
    for (const Effort effort : {Effort::quick, Effort::normal, Effort::thorough}) {
      if (effort > effort_) break;
      const std::size_t last = std::min(most, most_searched(effort));
      bool found = true;
      while (found && placed() > 0 && placed() < last) {
        const std::size_t n = placed() + 1;
        const long work = search_work(effort).of(n);
        found = std::any_of(standards.begin(), standards.end(),
                            [&](const auto& nested) { return try_standard(nested, n, work); });
      }
    }
  }

  bool try_standard(const packing::Nested& nested, std::size_t n, long work) {
    const double least = (1.0 - worth_polishing(n)) * spacing_ / nested.scale;
    const packing::StandardPlaces found = packing::standard_places(nested.standard, n, least, work);
    if (found.spacing < least) return false;
    std::vector<Point> places;
    for (const Point p : found.points) places.push_back(nested.placed(p));
    for (const double spare : {rounds_freely, 0.0}) {
      const KindDiscs all = bulbs(n, spare);
      Coordinates x = packing::to_coordinates(places);
      if (polished(all.discs, x) && keep(n, x, tries_each)) return true;
    }
    return false;
  }

  /// The same for every effort, and not counted.
  bool polished(const packing::Discs& discs, Coordinates& x) const {
    if (discs.size() <= few_bulbs) {
      return packing::polish(outline_, discs, packing::certified_overlap, x);
    }
    long work = 0;
    return packing::polish_if_near(outline_, discs, packing::certified_overlap, x, work);
  }

  const Outline& outline_;
  std::span<const PackKind> kinds_;
  double gap_, wall_, spacing_, margin_;
  Effort effort_;
  Random random_{2026};
  std::vector<Point> places_;
  std::vector<Point> printable_;  ///< a lattice that surely survives rounding
  Certified best_;
};

}  // namespace

Packing packing::most_of_one(const Outline& outline, const PackKind& kind, double gap, double wall,
                             Effort effort) {
  return MostBulbs{outline, kind, gap, wall, effort}.solve();
}

}  // namespace bulbwright
