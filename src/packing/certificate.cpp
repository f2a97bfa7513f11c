#include "packing/certificate.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace bulbwright::packing {

std::int64_t least_square(double distance_mm) {
  const double units = std::max(0.0, units_per_mm * distance_mm - allowed_units);
  return static_cast<std::int64_t>(std::ceil(units * units));
}

Certifier::Certifier(const Outline& outline, const Discs& discs)
    : outline_{&outline}, discs_{&discs}, size_class_(discs.size()) {
  std::vector<double> sizes;
  for (std::size_t i = 0; i < discs.size(); ++i) {
    const auto at = std::find(sizes.begin(), sizes.end(), discs.reach[i]);
    size_class_[i] = static_cast<std::size_t>(at - sizes.begin());
    if (at == sizes.end()) sizes.push_back(discs.reach[i]);
  }
  classes_ = sizes.size();
  for (const double a : sizes) {
    for (const double b : sizes) needed_.push_back(least_square(a + b));
  }
}

std::int64_t Certifier::needed(std::size_t i, std::size_t j) const {
  return needed_[size_class_[i] * classes_ + size_class_[j]];
}

bool Certifier::inside(std::size_t i, GridPoint p) const {
  const double m = discs_->margin[i];
  if (outline_->shape() == Shape::round) {
    const double radius = units_per_mm * (outline_->half_length() - m) + allowed_units;
    if (radius < 0.0) return false;
    return p.x * p.x + p.y * p.y <= static_cast<std::int64_t>(std::floor(radius * radius));
  }
  return outline_->depth(to_mm(p)) >= m - length_dust;
}

bool Certifier::holds(const std::vector<GridPoint>& layout) const {
  if (layout.size() != discs_->size()) return false;
  // Sorted by x, only discs within the greatest distance along x can be too near.
  std::vector<std::size_t> order(layout.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::sort(order.begin(), order.end(),
            [&](std::size_t a, std::size_t b) { return layout[a].x < layout[b].x; });
  const std::int64_t widest =
      needed_.empty() ? 0 : *std::max_element(needed_.begin(), needed_.end());
  for (std::size_t k = 0; k < order.size(); ++k) {
    const std::size_t i = order[k];
    if (!inside(i, layout[i])) return false;
    for (std::size_t l = k + 1; l < order.size(); ++l) {
      const std::size_t j = order[l];
      const std::int64_t dx = layout[j].x - layout[i].x;
      if (dx * dx >= widest) break;
      if (!apart(i, layout[i], j, layout[j])) return false;
    }
  }
  return true;
}

namespace {

/// Of pair distances and depths: the largest in mm, and as a share of the wanted pair distance (or
/// of twice the reach, for a wall); 0 where nothing lacks.
struct Shortfall {
  double mm = 0.0, share = 0.0;

  void take(double lacking_mm, double wanted_mm) {
    mm = std::max(mm, lacking_mm);
    share = std::max(share, lacking_mm / wanted_mm);
  }
};

Shortfall worst_shortfall(const Outline& outline, const Discs& discs, const Coordinates& x) {
  const std::size_t n = discs.size();
  Shortfall worst;
  for (std::size_t i = 0; i < n; ++i) {
    worst.take(discs.margin[i] - outline.depth({x[i], x[n + i]}), 2.0 * discs.reach[i]);
    for (std::size_t j = i + 1; j < n; ++j) {
      const double dx = x[i] - x[j], dy = x[n + i] - x[n + j];
      const double want = discs.reach[i] + discs.reach[j];
      worst.take(want - std::sqrt(dx * dx + dy * dy), want);
    }
  }
  return worst;
}

}  // namespace

Coordinates finely_rounded(Coordinates x) {
  for (double& v : x) v = std::round(v / fine_unit_mm) * fine_unit_mm;
  return x;
}

bool holds_finely(const Outline& outline, const Discs& discs, const Coordinates& x) {
  return worst_shortfall(outline, discs, x).mm <= allowed_finely;
}

Coordinates printed_coordinates(const std::vector<GridPoint>& layout) {
  const std::size_t n = layout.size();
  Coordinates x(2 * n);
  for (std::size_t i = 0; i < n; ++i) {
    const Point p = to_mm(layout[i]);
    x[i] = p.x;
    x[n + i] = p.y;
  }
  return x;
}

double violation(const Outline& outline, const Discs& discs, const Coordinates& x) {
  return worst_shortfall(outline, discs, x).share;
}

}  // namespace bulbwright::packing
