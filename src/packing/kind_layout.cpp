#include "packing/kind_layout.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "base/apportion.hpp"
#include "packing/seeds.hpp"

namespace bulbwright::packing {
namespace {

/// Below so many places all are near each other.
constexpr std::size_t all_near_below = 60;

/// Calls pair(i, j) for all pairs of n that lie within `reach` along x; returns how many.
template <class AtX, class PairOf>
long pairs_along_x(std::size_t n, AtX at_x, double reach, PairOf pair) {
  std::vector<std::size_t> order(n);
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return at_x(a) != at_x(b) ? at_x(a) < at_x(b) : a < b;
  });
  long pairs = static_cast<long>(n);
  for (std::size_t k = 0; k < n; ++k) {
    for (std::size_t l = k + 1; l < n && at_x(order[l]) - at_x(order[k]) <= reach; ++l) {
      pair(std::min(order[k], order[l]), std::max(order[k], order[l]));
      ++pairs;
    }
  }
  return pairs;
}

/// Within clump_reach of their least distance.
bool are_neighbours(const Coordinates& x, const KindDiscs& bulbs, std::size_t i, std::size_t j) {
  const std::size_t n = bulbs.kind.size();
  const double dx = x[i] - x[j], dy = x[n + i] - x[n + j];
  const double reach = clump_reach * (bulbs.discs.reach[i] + bulbs.discs.reach[j]);
  return dx * dx + dy * dy <= reach * reach;
}

/// The places about each place, nearest within a few spacings, with weight (1 / distance)^6.
struct Near {
  std::size_t place = 0;
  double weight = 0.0;
};

std::vector<std::vector<Near>> near_places(const std::vector<Point>& places, long& work) {
  const std::size_t n = places.size();
  double x0 = 1e300, x1 = -1e300, y0 = 1e300, y1 = -1e300;
  for (const Point p : places) {
    x0 = std::min(x0, p.x);
    x1 = std::max(x1, p.x);
    y0 = std::min(y0, p.y);
    y1 = std::max(y1, p.y);
  }
  const double area = std::max(1.0, (x1 - x0) * (y1 - y0));
  const double far2 = std::max(9.0 * area / static_cast<double>(n), 1.0);
  const bool all = n < all_near_below;
  const double reach = all ? 1e300 : std::sqrt(far2);
  std::vector<std::vector<Near>> near(n);
  const auto add = [&](std::size_t i, std::size_t j) {
    const double dx = places[i].x - places[j].x, dy = places[i].y - places[j].y;
    const double d2 = (dx * dx + dy * dy) / far2;
    if (d2 >= 1.0 && !all) return;
    const double weight = 1.0 / std::max(1e-9, d2 * d2 * d2);
    near[i].push_back({j, weight});
    near[j].push_back({i, weight});
  };
  work += pairs_along_x(
      n, [&](std::size_t i) { return places[i].x; }, reach, add);
  return near;
}

}  // namespace

/// Swaps kinds between places while that lowers the sum of the weights of like pairs.
void KindOrder::spread_kinds(const std::vector<Point>& places, std::vector<std::size_t>& at,
                             Random& random) {
  const std::size_t n = places.size();
  const auto near = near_places(places, work_);
  const auto like = [&](std::size_t place, std::size_t kind, std::size_t skip) {
    double sum = 0.0;
    work_ += static_cast<long>(near[place].size()) / 2;
    for (const Near& other : near[place]) {
      if (other.place != skip && at[other.place] == kind) sum += other.weight;
    }
    return sum;
  };
  const std::size_t offers = std::min<std::size_t>(n, 100);
  for (int round = 0; round < 6; ++round) {
    bool better = false;
    for (std::size_t i = 0; i < n; ++i) {
      for (std::size_t k = 0; k < offers; ++k) {
        const std::size_t j = offers == n ? k : random.below(n);
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

std::vector<std::size_t> apportion(std::size_t n, std::span<const PackKind> kinds) {
  std::vector<double> shares;
  for (const PackKind& kind : kinds) shares.push_back(kind.share);
  const std::vector<int> counts = bulbwright::apportion(static_cast<int>(n), shares);
  return {counts.begin(), counts.end()};
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

KindDiscs spaced_discs(std::span<const PackKind> kinds, const std::vector<std::size_t>& counts,
                       double gap, double wall, double spare) {
  return discs_of(kinds, counts, gap + spare, wall + spare / 2.0);
}

std::vector<std::size_t> KindOrder::arranged(const std::vector<Point>& places,
                                             const std::vector<std::size_t>& kind, Random& random) {
  const std::size_t n = places.size();
  std::vector<std::size_t> by_place(n);
  std::iota(by_place.begin(), by_place.end(), std::size_t{0});
  if (arrange_ == Arrange::drift) {
    std::stable_sort(by_place.begin(), by_place.end(), [&](std::size_t a, std::size_t b) {
      return places[a].x != places[b].x ? places[a].x < places[b].x : places[a].y < places[b].y;
    });
    return by_place;  // discs come kind by kind
  }
  for (std::size_t i = n; i > 1; --i) std::swap(by_place[i - 1], by_place[random.below(i)]);
  std::vector<std::size_t> at(n);
  for (std::size_t i = 0; i < n; ++i) at[by_place[i]] = kind[i];
  spread_kinds(places, at, random);
  std::vector<std::size_t> order(n);
  std::vector<std::size_t> next;  // the first place of each kind not yet given away
  for (std::size_t i = 0; i < n; ++i) {
    if (next.size() <= kind[i]) next.resize(kind[i] + 1, 0);
    std::size_t& p = next[kind[i]];
    while (at[p] != kind[i]) ++p;
    order[i] = p++;
  }
  return order;
}

std::vector<std::size_t> KindOrder::clump_members(const Coordinates& x, const KindDiscs& bulbs) {
  const std::size_t n = bulbs.kind.size();
  std::vector<std::size_t> counts;
  for (const std::size_t kind : bulbs.kind) {
    if (counts.size() <= kind) counts.resize(kind + 1, 0);
    ++counts[kind];
  }
  std::vector<std::size_t> scarce, group(n);
  for (std::size_t i = 0; i < n; ++i) {
    group[i] = i;
    if (3 * counts[bulbs.kind[i]] <= n) scarce.push_back(i);
  }
  const auto root = [&](std::size_t i) {
    while (group[i] != i) i = group[i] = group[group[i]];
    return i;
  };
  const double widest = 2.0 * clump_reach * greatest(bulbs.discs.reach);
  work_ += pairs_along_x(
      scarce.size(), [&](std::size_t k) { return x[scarce[k]]; }, widest,
      [&](std::size_t k, std::size_t l) {
        const std::size_t i = scarce[k], j = scarce[l];
        if (bulbs.kind[i] != bulbs.kind[j]) return;
        if (are_neighbours(x, bulbs, i, j)) group[root(j)] = root(i);
      });
  std::vector<std::size_t> size(n, 0), members;
  for (const std::size_t i : scarce) ++size[root(i)];
  for (const std::size_t i : scarce) {
    if (size[root(i)] > largest_clump) members.push_back(i);
  }
  return members;
}

Coordinates KindOrder::with_swap(Coordinates x, const KindDiscs& bulbs, Random& random) {
  const std::size_t n = bulbs.kind.size();
  const std::vector<std::size_t> members = clump_members(x, bulbs);
  if (members.empty()) return x;
  const std::size_t a = members[random.below(members.size())];
  constexpr int draws = 30;
  for (int k = 1; k <= draws; ++k) {
    const std::size_t b = random.below(n);
    if (bulbs.kind[a] == bulbs.kind[b]) continue;
    std::swap(x[a], x[b]);
    std::swap(x[n + a], x[n + b]);
    if (k == draws || clump_members(x, bulbs).size() < members.size()) break;
    std::swap(x[a], x[b]);
    std::swap(x[n + a], x[n + b]);
  }
  return x;
}

bool KindOrder::swap_like(Coordinates& x, const KindDiscs& bulbs, Random& random) {
  const std::size_t n = bulbs.kind.size();
  const auto like = [&](std::size_t i) {
    work_ += static_cast<long>(n);
    int count = 0;
    for (std::size_t j = 0; j < n; ++j) {
      count += j != i && bulbs.kind[j] == bulbs.kind[i] && are_neighbours(x, bulbs, i, j) ? 1 : 0;
    }
    return count;
  };
  constexpr int draws = 12;
  for (int k = 0; k < draws; ++k) {
    const std::size_t a = random.below(n), b = random.below(n);
    if (bulbs.kind[a] == bulbs.kind[b]) continue;
    const int before = like(a) + like(b);
    std::swap(x[a], x[b]);
    std::swap(x[n + a], x[n + b]);
    if (like(a) + like(b) < before) return true;
    std::swap(x[a], x[b]);
    std::swap(x[n + a], x[n + b]);
  }
  return false;
}

double like_neighbours(const Coordinates& x, const KindDiscs& bulbs) {
  const std::size_t n = bulbs.kind.size();
  double like = 0.0, all = 0.0;
  std::vector<double> counts;
  for (const std::size_t kind : bulbs.kind) {
    if (counts.size() <= kind) counts.resize(kind + 1, 0.0);
    counts[kind] += 1.0;
  }
  pairs_along_x(
      n, [&](std::size_t i) { return x[i]; }, 2.0 * clump_reach * greatest(bulbs.discs.reach),
      [&](std::size_t i, std::size_t j) {
        if (!are_neighbours(x, bulbs, i, j)) return;
        all += 1.0;
        like += bulbs.kind[i] == bulbs.kind[j] ? 1.0 : 0.0;
      });
  const auto bulbs_in_all = static_cast<double>(n);
  double chance = 0.0;
  for (const double count : counts) {
    chance += count * (count - 1.0) / (bulbs_in_all * (bulbs_in_all - 1.0));
  }
  return all > 0.0 && chance > 0.0 ? like / all / chance : 0.0;
}

bool KindOrder::in_bands(const Coordinates& x, const KindDiscs& bulbs) {
  const std::size_t n = bulbs.kind.size();
  work_ += static_cast<long>(n);
  double reach = 0.0, before = -1e300, here = -1e300;
  for (std::size_t i = 0; i < n; ++i) {
    reach = std::max(reach, bulbs.discs.reach[i]);
  }
  for (std::size_t i = 0; i < n; ++i) {  // discs come kind by kind
    if (i > 0 && bulbs.kind[i] != bulbs.kind[i - 1]) before = here;
    if (x[i] < before - 2.0 * reach) return false;
    here = std::max(here, x[i]);
  }
  return true;
}

Coordinates banded(Coordinates x, const KindDiscs& bulbs) {
  const std::vector<double>& reach = bulbs.discs.reach;
  if (std::any_of(reach.begin(), reach.end(), [&](double r) { return r != reach[0]; })) return x;
  std::vector<Point> places = to_points(x);
  std::stable_sort(places.begin(), places.end(), [](const Point& a, const Point& b) {
    return a.x != b.x ? a.x < b.x : a.y < b.y;
  });
  return to_coordinates(places);
}

}  // namespace bulbwright::packing
