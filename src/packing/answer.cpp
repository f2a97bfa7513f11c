#include "packing/answer.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

namespace bulbwright::packing {

long work_of(Effort effort) {
  switch (effort) {
    case Effort::quick:
      return 2'000'000;
    case Effort::normal:
      return 20'000'000;
    case Effort::thorough:
      return 200'000'000;
  }
  return 0;
}

namespace {

/// Bulbs sorted by y, then x, with what is measured; shortfalls up to `dust` are not shown.
Packing measured(const Outline& outline, const KindDiscs& bulbs, const Coordinates& x,
                 std::span<const PackKind> kinds, double gap, double wall, double dust) {
  constexpr double infinity = std::numeric_limits<double>::infinity();
  const std::size_t n = bulbs.kind.size();
  std::vector<std::size_t> order(n);
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return x[n + a] != x[n + b] ? x[n + a] < x[n + b] : x[a] < x[b];
  });
  Packing result;
  double least_gap = infinity, least_wall = infinity, widest = 0.0;
  for (const PackKind& kind : kinds) widest = std::max(widest, kind.diameter.value());
  for (std::size_t k = 0; k < n; ++k) {
    const std::size_t i = order[k];
    const double radius = kinds[bulbs.kind[i]].diameter.value() / 2.0;
    least_wall = std::min(least_wall, outline.depth({x[i], x[n + i]}) - radius);
    for (std::size_t l = k + 1; l < n; ++l) {
      const std::size_t j = order[l];  // sorted by y: the rest is further off still
      const double dx = x[j] - x[i], dy = x[n + j] - x[n + i];
      if (dy - widest > least_gap) break;
      const double other = kinds[bulbs.kind[j]].diameter.value() / 2.0;
      least_gap = std::min(least_gap, std::sqrt(dx * dx + dy * dy) - radius - other);
    }
  }
  for (const std::size_t i : order) result.bulbs.push_back({x[i], x[n + i], bulbs.kind[i]});
  result.gap = Millimetres{gap};
  result.least_gap = Millimetres{std::fabs(least_gap - gap) < dust ? gap : least_gap};
  result.least_wall = Millimetres{std::fabs(least_wall - wall) < dust ? wall : least_wall};
  return result;
}

}  // namespace

Packing packing_of(const Outline& outline, const KindDiscs& bulbs,
                   const std::vector<GridPoint>& layout, std::span<const PackKind> kinds,
                   double gap, double wall) {
  // Binary dust below the certificate's 1e-9 mm is not shown as a shortfall.
  return measured(outline, bulbs, printed_coordinates(layout), kinds, gap, wall, 2e-9);
}

Packing packing_of(const Outline& outline, const KindDiscs& bulbs, const Coordinates& layout,
                   std::span<const PackKind> kinds, double gap, double wall) {
  return measured(outline, bulbs, layout, kinds, gap, wall, 1.01 * allowed_finely);
}

Bound bound_of(const Outline& outline, std::span<const PackKind> kinds, double gap, double wall) {
  std::vector<std::size_t> by_size(kinds.size());
  std::iota(by_size.begin(), by_size.end(), std::size_t{0});
  std::stable_sort(by_size.begin(), by_size.end(), [&](std::size_t a, std::size_t b) {
    return kinds[a].diameter > kinds[b].diameter;
  });
  const auto limit_at = [&](std::size_t k) {
    const double d = kinds[k].diameter.value();
    return most_points(outline, d + gap, wall + d / 2.0);
  };
  Bound bound = limit_at(by_size.back());
  if (kinds.size() == 1) return bound;
  std::vector<Bound> limits;
  for (const std::size_t k : by_size) limits.push_back(limit_at(k));
  const auto broken = [&](std::size_t n) -> const Bound* {
    const std::vector<std::size_t> counts = apportion(n, kinds);
    std::size_t so_far = 0;
    for (std::size_t k = 0; k < by_size.size(); ++k) {
      so_far += counts[by_size[k]];
      if (so_far > limits[k].most) return &limits[k];
    }
    return nullptr;
  };
  // Every kind has its share but for less than one bulb, and what it gave up to kinds that would
  // have had none: more than this cannot hold.
  const std::size_t given_up = kinds.size() - 1;
  double shares = 0.0, all_shares = 0.0;
  for (const PackKind& kind : kinds) all_shares += kind.share;
  for (std::size_t k = 0; k < by_size.size(); ++k) {
    shares += kinds[by_size[k]].share;
    const double most =
        static_cast<double>(limits[k].most + k + 1 + given_up) * all_shares / shares + 1.0;
    if (most >= static_cast<double>(bound.most)) continue;
    bound = {static_cast<std::size_t>(most), limits[k].name + ", by size and share"};
  }
  while (bound.most > 0) {
    const Bound* const by = broken(bound.most);
    if (by == nullptr) break;
    bound = {bound.most - 1, by->name + ", by size and share"};
  }
  return bound;
}

}  // namespace bulbwright::packing
