// Makes and checks data/round_layouts.csv, the best layouts of equal discs in a circle that the
// project's own search has found. Usage:
//   packing_round_layouts improve FILE FIRST LAST STEP FROM TO SEED
//   packing_round_layouts table CSV FILE...
//   packing_round_layouts check
// `improve` works on the layouts of FILE (n and coordinates a line; made where missing) for every n
// from FIRST to LAST by STEP, in passes FROM to TO of 0.5e6 n 4^pass steps each. Every search
// starts from nothing or from a layout found before; no other source is read. `table` writes the
// best of all FILEs as data/round_layouts.csv. `check` polishes every row that is compiled in and
// compares its ratio with the records; exit 1 where one does not hold.
#include <algorithm>
#include <cmath>
#include <cstdio>
#include <fstream>
#include <map>
#include <sstream>
#include <string>
#include <vector>

#include <fmt/core.h>

#include "packing/certificate.hpp"
#include "packing/layout_search.hpp"
#include "packing/newton.hpp"
#include "packing/polish.hpp"
#include "packing/round_table.hpp"
#include "packing/seeds.hpp"

using namespace bulbwright;
using packing::Coordinates;

namespace {

/// Centres in a disc of this radius, mm; the widest least distance is looked for.
constexpr double room = 1000.0;
const Section disc{Shape::round, Millimetres{2.0 * room}, Millimetres{2.0 * room}, {}};

/// A layout of n centres and its least distance over its largest radius.
struct Found {
  double spread = 0.0;
  Coordinates x;
  [[nodiscard]] double ratio() const { return 1.0 + 2.0 / spread; }
};

double spread_of(const Coordinates& x) {
  const std::size_t n = x.size() / 2;
  double widest = 0.0, least = 1e300;
  for (std::size_t i = 0; i < n; ++i) {
    widest = std::max(widest, std::hypot(x[i], x[n + i]));
    for (std::size_t j = 0; j < i; ++j) {
      least = std::min(least, std::hypot(x[i] - x[j], x[n + i] - x[n + j]));
    }
  }
  return widest > 0.0 ? least / widest : 0.0;
}

Found scaled(Coordinates x) {
  const std::size_t n = x.size() / 2;
  double widest = 0.0;
  for (std::size_t i = 0; i < n; ++i) widest = std::max(widest, std::hypot(x[i], x[n + i]));
  if (widest > 0.0) {
    for (double& v : x) v *= room / widest;
  }
  return {spread_of(x), std::move(x)};
}

/// The layout let out to where its discs just touch.
Found polished(Coordinates x) {
  const packing::Outline outline{disc};
  Found best = scaled(std::move(x));
  for (int round = 0; round < 6; ++round) {
    double spacing = best.spread * room, touching = 0.0;
    long work = 0;
    bool better = false;
    for (const double more : {1e-6, 0.0}) {
      const packing::Discs discs =
          packing::equal_discs(best.x.size() / 2, spacing * (1.0 + more - 1e-13), 0.0);
      packing::Energy energy{outline, discs};
      energy.set_extra((round == 0 ? 1e-4 : 1e-6) * spacing);
      Coordinates trial = best.x;
      packing::Tightener tightener;
      tightener.let_out(energy, trial, {1e-13 * spacing, 1'000'000'000}, touching, work);
      Found found = scaled(std::move(trial));
      if (found.spread > best.spread) {
        better = better || found.spread > best.spread * (1.0 + 1e-13);
        best = std::move(found);
      }
      spacing = std::max(best.spread * room, (spacing + touching) * room / (room - touching));
    }
    if (!better && round > 0) break;
  }
  return best;
}

void look_further(std::size_t n, Found& best, long work, std::uint64_t seed) {
  const packing::Outline outline{disc};
  if (best.x.empty()) {
    const double ratio = std::sqrt(static_cast<double>(n) / 0.8) + 0.3;
    const packing::Discs discs = packing::equal_discs(n, 2.0 * room / (ratio - 1.0), 0.0);
    packing::LayoutSearch search{outline, discs, 1e-12, seed};
    search.run(work / 4);
    best = polished(search.layout());
  }
  bool from_best = seed % 2 == 1;
  while (work > 0) {
    const double spacing = best.spread * room * (1.0 + 5e-8);
    const packing::Discs discs = packing::equal_discs(n, spacing, 0.0);
    packing::LayoutSearch search{outline, discs, 1e-20 * spacing * spacing, seed++};
    const bool fits = (from_best && search.try_start(best.x)) || search.run(work);
    work -= std::max(1L, search.work());
    if (!fits) break;
    Found found = polished(search.layout());
    if (!(found.spread > best.spread)) break;
    best = std::move(found);
    from_best = true;
  }
}

std::map<std::size_t, Found> read(const std::string& path) {
  std::map<std::size_t, Found> all;
  std::ifstream file{path};
  for (std::string line; std::getline(file, line);) {
    std::istringstream cells{line};
    std::size_t n = 0;
    if (!(cells >> n)) continue;
    Coordinates x(2 * n);
    for (double& v : x) cells >> v;
    all[n] = polished(std::move(x));
  }
  return all;
}

void write(const std::string& path, const std::map<std::size_t, Found>& all) {
  std::ofstream file{path + ".new"};
  for (const auto& [n, found] : all) {
    file << n;
    for (const double v : found.x) file << fmt::format(" {:.12g}", v);
    file << "\n";
  }
  file.close();
  std::rename((path + ".new").c_str(), path.c_str());
}

/// Turned so that a disc of the rim stands on the x axis, the one about which the layout is most
/// nearly its own mirror image, and scaled to radius 1.
std::vector<packing::Point> upright(const Coordinates& x) {
  const std::size_t n = x.size() / 2;
  std::vector<packing::Point> best;
  double least = 1e300;
  for (std::size_t rim = 0; rim < n; ++rim) {
    const double radius = std::hypot(x[rim], x[n + rim]);
    if (radius < room * (1.0 - 1e-9)) continue;
    const double c = x[rim] / radius, s = x[n + rim] / radius;
    std::vector<packing::Point> turned(n);
    for (std::size_t i = 0; i < n; ++i) {
      turned[i] = {(c * x[i] + s * x[n + i]) / radius, (c * x[n + i] - s * x[i]) / radius};
    }
    double unlike = 0.0;
    for (const packing::Point p : turned) {
      double nearest = 1e300;
      for (const packing::Point q : turned)
        nearest = std::min(nearest, std::hypot(p.x - q.x, p.y + q.y));
      unlike += nearest;
    }
    if (unlike >= least - 1e-6) continue;
    least = unlike;
    best = std::move(turned);
  }
  std::sort(best.begin(), best.end(), [](packing::Point p, packing::Point q) {
    return std::lround(16383.0 * p.y) != std::lround(16383.0 * q.y) ? p.y < q.y : p.x < q.x;
  });
  return best;
}

std::string encoded(const std::vector<packing::Point>& points) {
  constexpr const char* digits = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
  std::string text;
  for (const packing::Point p : points) {
    const long whole =
        std::lround(16383.0 * (1.0 + p.x)) * 32768 + std::lround(16383.0 * (1.0 + p.y));
    for (int shift = 24; shift >= 0; shift -= 6) text += digits[(whole >> shift) % 64];
  }
  return text;
}

/// The places as they will be read again.
std::vector<packing::Point> written(std::vector<packing::Point> points) {
  const auto coarse = [](double v) {
    return (static_cast<double>(std::lround(16383.0 * (1.0 + v))) - 16383.0) / 16383.0;
  };
  for (packing::Point& p : points) p = {coarse(p.x), coarse(p.y)};
  return points;
}

/// Whether places that are good to a few digits polish to a layout at this ratio.
bool holds(std::size_t n, double ratio, std::vector<packing::Point> points) {
  const packing::Outline outline{disc};
  const double spacing = 2.0 * room / (ratio * (1.0 + 1e-9) - 1.0);
  const packing::Discs discs = packing::equal_discs(n, spacing, 0.0);
  for (packing::Point& p : points) p = {room * p.x, room * p.y};
  Coordinates x = packing::to_coordinates(points);
  return packing::polish(outline, discs, 0.8e-9 * spacing, x) &&
         packing::violation(outline, discs, x) <= 1e-9;
}

void write_table(const std::string& path, std::map<std::size_t, Found> all) {
  // One disc less never needs a wider circle.
  for (std::size_t n = all.rbegin()->first; n-- > 2;) {
    if (all.at(n).spread >= all.at(n + 1).spread) continue;
    Coordinates& x = all.at(n).x;
    const Coordinates& wider = all.at(n + 1).x;
    x.clear();
    for (std::size_t k = 0; k < 2 * (n + 1); ++k) {
      if (k != n && k != 2 * n + 1) x.push_back(wider[k]);
    }
    all.at(n) = scaled(x);
  }
  double least = 1.0;
  std::ofstream file{path};
  file << fmt::format("n,ratio,places\n1,1,{}\n", encoded({{0.0, 0.0}}));
  for (const auto& [n, found] : all) {
    const std::vector<packing::Point> points = upright(found.x);
    // As little above the ratio found as lets the places written be polished.
    double ratio = 0.0;
    for (double more = 2e-10; more < 1e-3; more *= 5.0) {
      ratio = std::ceil(found.ratio() * (1.0 + more) * 1e10) / 1e10;
      if (holds(n, ratio, written(points))) break;
    }
    least = std::max(least, ratio);
    file << fmt::format("{},{:.10f},{}\n", n, least, encoded(points));
  }
}

int check() {
  int faults = 0;
  for (std::size_t n = 2; n <= packing::round_table_size(); ++n) {
    if (holds(n, packing::round_table_ratio(n), packing::round_table_layout(n))) continue;
    ++faults;
    fmt::print("{}: no layout at its ratio {:.10f}\n", n, packing::round_table_ratio(n));
  }
  fmt::print("{} of {} rows do not hold\n", faults, packing::round_table_size());
  return faults == 0 ? 0 : 1;
}

}  // namespace

int main(int argc, char** argv) {
  const std::string command = argc > 1 ? argv[1] : "";
  if (command == "check") return check();
  if (command == "table" && argc > 3) {
    std::map<std::size_t, Found> best;
    for (int k = 3; k < argc; ++k) {
      for (auto& [n, found] : read(argv[k])) {
        if (found.spread > best[n].spread) best[n] = std::move(found);
      }
    }
    write_table(argv[2], std::move(best));
    return 0;
  }
  if (command == "improve" && argc > 8) {
    const std::string path = argv[2];
    auto all = read(path);
    const long first = std::stol(argv[3]), last = std::stol(argv[4]), step = std::stol(argv[5]);
    const int from = std::stoi(argv[6]), to = std::stoi(argv[7]);
    const auto seed = std::stoul(argv[8]);
    for (int pass = from; pass <= to; ++pass) {
      for (long k = first; step > 0 ? k <= last : k >= last; k += step) {
        const auto n = static_cast<std::size_t>(k);
        Found& best = all[n];
        const double before = best.spread;
        look_further(n, best,
                     static_cast<long>(0.5e6 * std::pow(4.0, pass) * static_cast<double>(n)),
                     n + 1000 * static_cast<std::size_t>(pass) + 1000000 * seed);
        fmt::print("pass {} n {} ratio {:.12f} {}\n", pass, n, best.ratio(),
                   best.spread > before * (1.0 + 1e-9) ? "better" : "");
        std::fflush(stdout);
        write(path, all);
      }
    }
    return 0;
  }
  fmt::print("usage: see the head of packing_round_layouts.cpp\n");
  return 2;
}
