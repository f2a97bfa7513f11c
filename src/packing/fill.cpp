#include "packing/fill.hpp"

#include <algorithm>
#include <cmath>

namespace bulbwright::packing {
namespace {

constexpr double step_mm = 2.0;
constexpr std::size_t most_filled = 5000;

/// Of looking for a bulb in the way, in the units of the search.
constexpr long work_of_a_test = 8;

constexpr double near_factor = 1.25;  ///< a little more than what counts as touching in a clump

/// The scan for the places of one kind. Places that are taken stay taken, so it only goes forward.
struct Scan {
  double radius = 0.0;  ///< mm
  double along = 0.0, across = 0.0;
  bool open = false;                        ///< within a row
  std::size_t most_together = most_filled;  ///< of the kind's bulbs within `near` of one another
  double near = 0.0;                        ///< mm
};

class Fill {
 public:
  /// `widest`: the largest bulb's diameter, mm.
  Fill(const Outline& outline, double widest, double gap, double wall, bool turned)
      : outline_{outline},
        gap_{gap},
        wall_{wall},
        turned_{turned},
        cell_{widest + gap},
        columns_{static_cast<std::size_t>(2.0 * outline.half_length() / cell_) + 3},
        in_cell_(columns_ *
                 (static_cast<std::size_t>((outline.top() - outline.bottom()) / cell_) + 3)) {}

  /// Puts a bulb at the next free place of its kind's scan.
  bool place(Scan& scan, std::size_t kind) {
    const double m = wall_ + scan.radius;
    const double low = turned_ ? -outline_.half_length() : outline_.bottom();
    const double high = turned_ ? outline_.half_length() : outline_.top();
    const double left = turned_ ? outline_.bottom() : -outline_.half_length();
    const double right = turned_ ? outline_.top() : outline_.half_length();
    if (!scan.open) {
      scan.across = low + m;
      scan.along = left + m;
      scan.open = true;
    }
    for (; scan.across <= high - m; scan.across += step_mm) {
      while (scan.along <= right - m) {
        const Point p = turned_ ? Point{scan.across, scan.along} : Point{scan.along, scan.across};
        const double beyond = taken_until(p, scan.radius);
        if (beyond > scan.along) {  // on by whole steps past the bulb in the way
          scan.along += step_mm * std::max(1.0, std::ceil((beyond - scan.along) / step_mm));
          continue;
        }
        if (outline_.is_deep(p, m) && (scan.most_together == most_filled || joins(p, scan, kind))) {
          if (scan.most_together == most_filled) group_.push_back(placed_.size());
          in_cell_[cell_of(p)].push_back(placed_.size());
          placed_.push_back(p);
          radius_.push_back(scan.radius);
          kind_.push_back(kind);
          return true;
        }
        scan.along += step_mm;
      }
      scan.along = left + m;
    }
    return false;
  }

  [[nodiscard]] KindLayout filled(std::size_t kinds) const {
    const std::size_t n = placed_.size();
    KindLayout result{Coordinates(2 * n), std::vector<std::size_t>(kinds, 0)};
    std::size_t at = 0;
    for (std::size_t k = 0; k < kinds; ++k) {
      for (std::size_t i = 0; i < n; ++i) {
        if (kind_[i] != k) continue;
        ++result.counts[k];
        result.x[at] = placed_[i].x;
        result.x[n + at++] = placed_[i].y;
      }
    }
    return result;
  }

  [[nodiscard]] long work() const { return work_; }

 private:
  /// Cells have an empty border: those about a point are always there.
  [[nodiscard]] std::size_t cell_of(Point p) const {
    const auto column = static_cast<std::size_t>((p.x + outline_.half_length()) / cell_) + 1;
    return (static_cast<std::size_t>((p.y - outline_.bottom()) / cell_) + 1) * columns_ + column;
  }

  /// Where along the row a bulb in the way leaves room again; p's own place if none is.
  double taken_until(Point p, double radius) {
    const double along = turned_ ? p.y : p.x;
    const std::size_t middle = cell_of(p);
    for (const std::size_t row : {middle - columns_, middle, middle + columns_}) {
      for (std::size_t cell = row - 1; cell <= row + 1; ++cell) {
        for (const std::size_t i : in_cell_[cell]) {
          const double dx = p.x - placed_[i].x, dy = p.y - placed_[i].y;
          const double want = radius + radius_[i] + gap_;
          if (dx * dx + dy * dy >= want * want) continue;
          work_ += work_of_a_test;
          const double across = turned_ ? dx : dy, other = turned_ ? placed_[i].y : placed_[i].x;
          return std::max(other + std::sqrt(want * want - across * across) - 1e-9, along + 1e-9);
        }
      }
    }
    work_ += work_of_a_test;
    return along;
  }

  /// Whether the groups that a bulb here would join stay small enough; if so it joins them. What is
  /// too large once stays so, and the scan need not come back.
  bool joins(Point p, const Scan& scan, std::size_t kind) {
    std::vector<std::size_t> touched;
    std::size_t size = 1;
    for (std::size_t i = 0; i < placed_.size(); ++i) {
      const double dx = p.x - placed_[i].x, dy = p.y - placed_[i].y;
      if (kind_[i] != kind || dx * dx + dy * dy > scan.near * scan.near) continue;
      const std::size_t group = group_[i];
      if (std::find(touched.begin(), touched.end(), group) != touched.end()) continue;
      touched.push_back(group);
      size += static_cast<std::size_t>(std::count(group_.begin(), group_.end(), group));
    }
    work_ += static_cast<long>(placed_.size());
    if (size > scan.most_together) return false;
    for (std::size_t& group : group_) {
      if (std::find(touched.begin(), touched.end(), group) != touched.end()) group = placed_.size();
    }
    group_.push_back(placed_.size());
    return true;
  }

  const Outline& outline_;
  double gap_, wall_;
  bool turned_;
  double cell_;  ///< no narrower than two bulbs can want, mm
  std::size_t columns_;
  std::vector<std::vector<std::size_t>> in_cell_;  ///< bulbs placed, cells row by row
  long work_ = 0;
  std::vector<Point> placed_;
  std::vector<double> radius_;
  std::vector<std::size_t> kind_;
  std::vector<std::size_t> group_;  ///< a number for the group each bulb is in
};

}  // namespace

KindLayout greedy_fill(const Outline& outline, std::span<const PackKind> kinds, double gap,
                       double wall, bool turned, Spread spread, long& work) {
  double widest = 0.0;
  for (const PackKind& kind : kinds) widest = std::max(widest, kind.diameter.value());
  Fill fill{outline, widest, gap, wall, turned};
  std::vector<Scan> scans;
  double shares = 0.0, squares = 0.0;
  for (const PackKind& kind : kinds) {
    const double spacing = kind.diameter.value() + gap;
    shares += kind.share;
    squares += kind.share * spacing * spacing;
  }
  for (const PackKind& kind : kinds) {
    Scan scan{kind.diameter.value() / 2.0};
    if (spread != Spread::none && 3.0 * kind.share <= shares * (1.0 + 1e-9)) {
      const bool single = spread == Spread::singles;
      scan.most_together = single ? 1 : largest_clump;
      scan.near = single ? 0.75 * std::sqrt(squares / kind.share)
                         : near_factor * (kind.diameter.value() + gap);
    }
    scans.push_back(scan);
  }
  std::vector<std::size_t> given(kinds.size(), 0);
  for (std::size_t n = 1; n <= most_filled; ++n) {
    const std::vector<std::size_t> wanted = apportion(n, kinds);
    std::size_t kind = 0;
    while (kind + 1 < kinds.size() && wanted[kind] <= given[kind]) ++kind;
    if (!fill.place(scans[kind], kind)) break;
    ++given[kind];
  }
  work += fill.work();
  return fill.filled(kinds.size());
}

}  // namespace bulbwright::packing
