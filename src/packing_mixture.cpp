#include "packing_mixture.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace bulbwright::packing {
namespace {

/// Swaps kinds between places while that lowers the sum over like pairs of (1 / distance)^6.
void spread_kinds(const std::vector<Point>& places, std::vector<std::size_t>& at) {
  const std::size_t n = places.size();
  std::vector<double> near(n * n, 0.0);
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t j = 0; j < n; ++j) {
      if (i == j) continue;
      const double dx = places[i].x - places[j].x, dy = places[i].y - places[j].y;
      const double d2 = std::max(1e-6, dx * dx + dy * dy);
      near[i * n + j] = 1.0 / (d2 * d2 * d2);
    }
  }
  const auto like = [&](std::size_t place, std::size_t kind, std::size_t skip) {
    double sum = 0.0;
    for (std::size_t j = 0; j < n; ++j) {
      if (j != skip && j != place && at[j] == kind) sum += near[place * n + j];
    }
    return sum;
  };
  for (int round = 0; round < 6; ++round) {
    bool better = false;
    for (std::size_t i = 0; i < n; ++i) {
      for (std::size_t j = i + 1; j < n; ++j) {
        if (at[i] == at[j]) continue;
        const double now = like(i, at[i], j) + like(j, at[j], i);
        const double swapped = like(i, at[j], j) + like(j, at[i], i);
        if (swapped < now * (1.0 - 1e-9)) {
          std::swap(at[i], at[j]);
          better = true;
        }
      }
    }
    if (!better) break;
  }
}

}  // namespace

std::vector<std::size_t> apportion(std::size_t n, std::span<const PackKind> kinds) {
  double total = 0.0;
  for (const PackKind& kind : kinds) total += kind.share;
  std::vector<std::size_t> counts;
  std::vector<double> rest;
  std::size_t given = 0;
  for (const PackKind& kind : kinds) {
    const double exact = static_cast<double>(n) * kind.share / total;
    const double whole = std::floor(exact + 1e-9);
    counts.push_back(static_cast<std::size_t>(whole));
    rest.push_back(exact - whole);
    given += counts.back();
  }
  std::vector<std::size_t> order(kinds.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return rest[a] > rest[b] + 1e-9; });
  for (std::size_t k = 0; given < n; ++given, ++k) ++counts[order[k % order.size()]];
  return counts;
}

KindDiscs discs_of(std::span<const PackKind> kinds, const std::vector<std::size_t>& counts,
                   double gap, double wall) {
  KindDiscs all;
  for (std::size_t k = 0; k < kinds.size(); ++k) {
    const double d = kinds[k].diameter.value();
    for (std::size_t i = 0; i < counts[k]; ++i) {
      all.discs.reach.push_back((d + gap) / 2.0);
      all.discs.margin.push_back(wall + d / 2.0);
      all.kind.push_back(k);
    }
  }
  return all;
}

std::vector<std::size_t> arrange_kinds(const std::vector<Point>& places,
                                       const std::vector<std::size_t>& kind, Arrange arrange,
                                       Random& random) {
  const std::size_t n = places.size();
  std::vector<std::size_t> by_place(n);
  std::iota(by_place.begin(), by_place.end(), std::size_t{0});
  if (arrange == Arrange::drift) {
    std::stable_sort(by_place.begin(), by_place.end(), [&](std::size_t a, std::size_t b) {
      return places[a].x != places[b].x ? places[a].x < places[b].x : places[a].y < places[b].y;
    });
    return by_place;  // discs come kind by kind
  }
  for (std::size_t i = n; i > 1; --i) std::swap(by_place[i - 1], by_place[random.below(i)]);
  std::vector<std::size_t> at(n);
  for (std::size_t i = 0; i < n; ++i) at[by_place[i]] = kind[i];
  spread_kinds(places, at);
  std::vector<std::size_t> order(n);
  std::vector<char> used(n, 0);
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t p = 0; p < n; ++p) {
      if (used[p] != 0 || at[p] != kind[i]) continue;
      order[i] = p;
      used[p] = 1;
      break;
    }
  }
  return order;
}

std::size_t largest_clump(const Coordinates& x, const KindDiscs& bulbs, std::size_t kind) {
  const std::size_t n = bulbs.kind.size();
  std::vector<char> seen(n, 0);
  std::size_t largest = 0;
  for (std::size_t first = 0; first < n; ++first) {
    if (seen[first] != 0 || bulbs.kind[first] != kind) continue;
    std::vector<std::size_t> group{first};
    seen[first] = 1;
    for (std::size_t k = 0; k < group.size(); ++k) {
      const std::size_t i = group[k];
      for (std::size_t j = 0; j < n; ++j) {
        if (seen[j] != 0 || bulbs.kind[j] != kind) continue;
        const double dx = x[i] - x[j], dy = x[n + i] - x[n + j];
        const double near = 1.2 * (bulbs.discs.reach[i] + bulbs.discs.reach[j]);
        if (dx * dx + dy * dy > near * near) continue;
        seen[j] = 1;
        group.push_back(j);
      }
    }
    largest = std::max(largest, group.size());
  }
  return largest;
}

}  // namespace bulbwright::packing
