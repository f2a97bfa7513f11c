#include "packing/rings.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "packing/random.hpp"

namespace bulbwright::packing {
namespace {

constexpr double pi = 3.14159265358979323846;

/// Rounded, because sine and cosine may differ in their last bit between machines.
double tidy(double v) {
  return std::nearbyint(v * 0x1.0p40) * 0x1.0p-40;
}

/// The least radius of n places in a ring, neighbours `spacing` apart.
double ring_radius(std::size_t n, double spacing) {
  if (n < 2) return 0.0;
  return spacing / (2.0 * tidy(std::sin(pi / static_cast<double>(n))));
}

/// Rings of a round section: how many on each, where, and by which part of a turn moved.
struct Ring {
  std::size_t count = 0;
  double radius = 0.0, turn = 0.0;
};

/// The largest radius within a ring for m places, turned as far from its places as can be.
double radius_within(const Ring& ring, std::size_t m, double spacing) {
  if (m < 2) return ring.radius - spacing;
  const double between = pi / static_cast<double>(std::lcm(ring.count, m));
  const double across = ring.radius * tidy(std::sin(between));
  if (across >= spacing) return ring.radius;
  return ring.radius * tidy(std::cos(between)) - std::sqrt(spacing * spacing - across * across);
}

/// Tries full rings and some with a few places fewer, which let the next one come nearer.
class RoundRings {
 public:
  RoundRings(double room, double spacing) : spacing_{spacing} {
    for (std::size_t n = most_at(room); n > 0 && n + fewer > most_at(room); --n) {
      rings_ = {{n, n < 2 ? 0.0 : room, 0.0}};
      go_inwards(n);
    }
  }
  [[nodiscard]] const std::vector<Ring>& best() const { return best_; }

 private:
  static constexpr std::size_t fewer = 4;  ///< tried of every ring, down from the most
  static constexpr long most_tries = 20'000;

  [[nodiscard]] std::size_t most_at(double radius) const {
    std::size_t n = 1;
    while (n < most_bulbs_ && ring_radius(n + 1, spacing_) <= radius + length_dust) ++n;
    return n;
  }

  void go_inwards(std::size_t so_far) {
    if (so_far > most_) {
      most_ = so_far;
      best_ = rings_;
    }
    if (++tries_ > most_tries) return;
    const Ring outer = rings_.back();
    if (outer.radius < spacing_ / 2.0) return;
    std::size_t offered = 0;
    for (std::size_t m = most_at(outer.radius - 0.5 * spacing_); m > 0 && offered < fewer; --m) {
      const double radius = radius_within(outer, m, spacing_);
      if (radius < -length_dust || radius + length_dust < ring_radius(m, spacing_)) continue;
      // The ring but one must be far enough too.
      if (rings_.size() > 1 && rings_[rings_.size() - 2].radius - radius < spacing_ - length_dust) {
        continue;
      }
      ++offered;
      const double turn =
          outer.turn + 0.5 / static_cast<double>(std::lcm(outer.count, m));  // of a whole turn
      rings_.push_back({m, m < 2 ? 0.0 : radius, turn});
      go_inwards(so_far + m);
      rings_.pop_back();
    }
  }

  static constexpr std::size_t most_bulbs_ = 5000;
  double spacing_;
  std::vector<Ring> rings_, best_;
  std::size_t most_ = 0;
  long tries_ = 0;
};

PlaceSets round_rings(double room, double spacing) {
  PlaceSets sets;
  const RoundRings rings{room, spacing};
  for (const Ring& ring : rings.best()) {
    std::vector<Point> places;
    for (std::size_t k = 0; k < ring.count; ++k) {
      const double angle =
          2.0 * pi * (static_cast<double>(k) / static_cast<double>(ring.count) + ring.turn);
      places.push_back({ring.radius * tidy(std::sin(angle)), ring.radius * tidy(std::cos(angle))});
    }
    sets.push_back(std::move(places));
  }
  return sets;
}

/// The farthest point from `from` along (dx, dy) that is `margin` deep; `from` is.
Point farthest(const Outline& outline, Point from, double dx, double dy, double margin) {
  double low = 0.0, high = 2.0 * (outline.half_length() + outline.top());
  for (int i = 0; i < 60; ++i) {
    const double t = (low + high) / 2.0;
    (outline.depth({from.x + t * dx, from.y + t * dy}) >= margin ? low : high) = t;
  }
  return {from.x + low * dx, from.y + low * dy};
}

/// n places evenly along a closed line.
std::vector<Point> evenly_along(const std::vector<Point>& line, std::size_t n) {
  std::vector<double> at{0.0};
  for (std::size_t i = 0; i < line.size(); ++i) {
    const Point p = line[i], q = line[(i + 1) % line.size()];
    at.push_back(at.back() + std::sqrt((q.x - p.x) * (q.x - p.x) + (q.y - p.y) * (q.y - p.y)));
  }
  std::vector<Point> places;
  std::size_t i = 0;
  for (std::size_t k = 0; k < n; ++k) {
    const double wanted = at.back() * static_cast<double>(k) / static_cast<double>(n);
    while (at[i + 1] <= wanted && i + 2 < at.size()) ++i;
    const double step = at[i + 1] - at[i];
    const double t = step > 0.0 ? (wanted - at[i]) / step : 0.0;
    const Point p = line[i], q = line[(i + 1) % line.size()];
    places.push_back({p.x + t * (q.x - p.x), p.y + t * (q.y - p.y)});
  }
  return places;
}

double least_distance(const std::vector<Point>& places) {
  double least = 1e300;
  for (std::size_t i = 0; i < places.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      const double dx = places[i].x - places[j].x, dy = places[i].y - places[j].y;
      least = std::min(least, dx * dx + dy * dy);
    }
  }
  return std::sqrt(least);
}

/// Rings at depths `spacing` apart, which keeps them from each other.
PlaceSets rings_by_depth(const Outline& outline, double spacing, double margin) {
  PlaceSets sets;
  constexpr int corners = 720;
  const Point middle = outline.deepest();
  double depth = margin;
  for (; depth <= outline.inradius() - spacing / 2.0; depth += spacing) {
    std::vector<Point> line;
    for (int k = 0; k < corners; ++k) {
      const Direction d = even_direction(static_cast<std::size_t>(k), corners);
      line.push_back(farthest(outline, middle, d.y, d.x, depth));  // from the back, clockwise
    }
    double length = 0.0;
    for (std::size_t i = 0; i < line.size(); ++i) {
      const Point p = line[i], q = line[(i + 1) % line.size()];
      length += std::sqrt((q.x - p.x) * (q.x - p.x) + (q.y - p.y) * (q.y - p.y));
    }
    auto n = static_cast<std::size_t>(length / spacing);
    std::vector<Point> places = evenly_along(line, n);
    while (n > 1 && least_distance(places) < spacing) places = evenly_along(line, --n);
    if (n < 2) break;
    sets.push_back(std::move(places));
  }
  if (depth > outline.inradius() + length_dust) return sets;
  // What is left is flat: a row along its longer axis.
  const bool upright = outline.top() - outline.bottom() > 2.0 * outline.half_length();
  const Point end = farthest(outline, middle, upright ? 0.0 : 1.0, upright ? 1.0 : 0.0, depth);
  const double half = upright ? end.y - middle.y : end.x;
  const double count = std::floor(2.0 * half / spacing + 1e-9) + 1.0;
  std::vector<Point> row;
  for (double k = 0.0; k < count; k += 1.0) {
    const double along = count > 1.0 ? -half + 2.0 * half * k / (count - 1.0) : 0.0;
    row.push_back(upright ? Point{0.0, middle.y + along} : Point{along, middle.y});
  }
  sets.push_back(std::move(row));
  return sets;
}

/// Straight rows: `at` across, where they begin to be counted along, how they are moved.
struct RowForm {
  double first = 0.0, apart = 0.0, pitch = 0.0;
  int rows = 0;
  double even = 0.0, odd = 0.0;  ///< a place of the rows in turn, from the origin along
};

class Rows {
 public:
  Rows(const Outline& outline, double spacing, double margin, bool upright)
      : outline_{outline}, spacing_{spacing}, margin_{margin}, upright_{upright} {
    if (outline.shape() == Shape::half_round) base_ = margin;
  }

  PlaceSets fullest() {
    const double low = reach(false), high = reach(true), rise = high - low;
    const int most = static_cast<int>(rise / (spacing_ / 2.0) + 1e-9) + 1;
    for (int rows = 1; rows <= most; ++rows) {
      for (int step = 0; step <= steps; ++step) {
        const double widest = rows > 1 ? rise / (rows - 1) : 0.0;
        const double apart = widest - step * (widest - spacing_ / 2.0) / steps;
        if (rows > 1 && apart < spacing_ / 2.0 - length_dust) continue;
        const double spare = rise - (rows - 1) * apart;
        const bool lopsided = outline_.shape() == Shape::half_round && !upright_;
        for (const double share : {0.5, 0.0, 0.25}) {
          if (share < 0.5 && !lopsided) break;
          try_rows(rows, low + share * spare, apart);
        }
        if (rows == 1) break;
      }
    }
    return best_;
  }

 private:
  static constexpr int steps = 24;

  [[nodiscard]] Point at(double along, double across) const {
    return upright_ ? Point{across, along} : Point{along, across};
  }
  /// The end of the deep part across the rows.
  [[nodiscard]] double reach(bool upper) const {
    const Point from = upright_ ? Point{0.0, base_} : outline_.deepest();
    const double sign = upper ? 1.0 : -1.0;
    const Point end = farthest(outline_, from, upright_ ? sign : 0.0, upright_ ? 0.0 : sign,
                               margin_ - length_dust);
    return upright_ ? end.x : end.y;
  }

  void try_rows(int rows, double first, double apart) {
    const double s2 = spacing_ * spacing_;
    const bool free = rows == 1 || apart >= spacing_ - length_dust;
    const double pitch = free ? spacing_ : std::max(spacing_, 2.0 * std::sqrt(s2 - apart * apart));
    const bool from_base = upright_ && outline_.shape() == Shape::half_round;
    keep({first, apart, pitch, rows, 0.0, pitch / 2.0});
    keep({first, apart, pitch, rows, pitch / 2.0, 0.0});
    if (free && !from_base) keep({first, apart, pitch, rows, pitch / 2.0, pitch / 2.0});
    if (free) keep({first, apart, pitch, rows, 0.0, 0.0});
    if (!from_base) keep({first, apart, pitch, rows, pitch / 4.0, -pitch / 4.0});
  }

  void keep(const RowForm& form) {
    PlaceSets sets;
    std::size_t count = 0;
    for (int row = 0; row < form.rows; ++row) {
      const double across = form.first + row * form.apart;
      const double from = base_along() + (row % 2 == 0 ? form.even : form.odd);
      std::vector<Point> places;
      const double ends = outline_.half_length() + outline_.top();
      const double first = from - form.pitch * std::floor((from + ends) / form.pitch);
      for (double along = first; along <= ends; along += form.pitch) {
        const double exact = from + form.pitch * std::nearbyint((along - from) / form.pitch);
        const Point p = at(exact, across);
        if (outline_.is_deep(p, margin_ - length_dust)) places.push_back(p);
      }
      count += places.size();
      if (!places.empty()) sets.push_back(std::move(places));
    }
    if (count <= most_) return;
    most_ = count;
    best_ = std::move(sets);
  }
  [[nodiscard]] double base_along() const { return upright_ ? base_ : 0.0; }

  const Outline& outline_;
  double spacing_, margin_;
  bool upright_;
  double base_ = 0.0;
  std::size_t most_ = 0;
  PlaceSets best_;
};

}  // namespace

std::size_t places_in(const PlaceSets& sets) {
  std::size_t count = 0;
  for (const auto& set : sets) count += set.size();
  return count;
}

PlaceSets fullest_rings(const Outline& outline, double spacing, double margin) {
  if (margin > outline.inradius() + length_dust) return {};
  if (outline.shape() == Shape::round) {
    return round_rings(std::max(0.0, outline.half_length() - margin), spacing);
  }
  return rings_by_depth(outline, spacing, margin);
}

PlaceSets fullest_rows(const Outline& outline, double spacing, double margin, bool upright) {
  if (margin > outline.inradius() + length_dust) return {};
  return Rows{outline, spacing, margin, upright}.fullest();
}

}  // namespace bulbwright::packing
