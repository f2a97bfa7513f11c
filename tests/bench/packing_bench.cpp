// The figures of docs/packing.md. Usage: packing_bench [quick|all] [SVG file for the scaling plot]
// "quick" leaves out the thorough rows. Times are processor time of this process.
#include <algorithm>
#include <array>
#include <cmath>
#include <ctime>
#include <fstream>
#include <string>
#include <vector>

#include <fmt/core.h>
#include <sys/resource.h>

#include "packing/lattice.hpp"
#include "packing/packing.hpp"
#include "packing/relax.hpp"
#include "packing/seeds.hpp"
#include "packing_baseline.hpp"
#include "source_paths.hpp"

using namespace bulbwright;

namespace {

struct Record {
  std::string container;
  std::size_t n = 0;
  double ratio = 0.0;
};

std::vector<Record> records(const std::string& container) {
  std::ifstream file{bulbwright::fixture::source_path("tests/vectors/packing_records.csv")};
  std::vector<Record> all;
  for (std::string line; std::getline(file, line);) {
    const auto first = line.find(','), second = line.find(',', first + 1);
    const auto third = line.find(',', second + 1);
    if (line.substr(0, first) != container) continue;
    all.push_back(
        {container, std::stoul(line.substr(second + 1, third)), std::stod(line.substr(third + 1))});
  }
  return all;
}

double milliseconds(std::clock_t since) {
  return 1e3 * static_cast<double>(std::clock() - since) / CLOCKS_PER_SEC;
}

const char* name(Effort effort) {
  return effort == Effort::quick ? "quick" : effort == Effort::normal ? "normal" : "thorough";
}

const Section circle{Shape::round, 2000_mm, 2000_mm, {}};

/// The record count at a ratio: the largest n listed whose ratio is no greater.
std::size_t record_count(const std::vector<Record>& all, double ratio) {
  std::size_t best = 0;
  for (const Record& r : all) {
    if (r.ratio <= ratio) best = std::max(best, r.n);
  }
  return best;
}

/// What a round pot of `ratio` times the bulbs' size is printed to hold: bulbs of 100 mm.
std::size_t printed_count(double ratio, Effort effort) {
  const Millimetres width{100.0 * ratio};
  const std::vector<PackKind> kinds{{100_mm, 1.0, 0}};
  return pack_most({Shape::round, width, width, {}}, kinds, 0_mm, 0_mm, effort).bulbs.size();
}

void large_table(const std::vector<Effort>& efforts) {
  fmt::print("\nPrinted positions, n = 101..300 of the records, pot = record x 1.005\n");
  for (const Effort effort : efforts) {
    double least = 1.0, sum = 0.0;
    int all = 0;
    const std::clock_t start = std::clock();
    std::string counts;
    for (const Record& r : records("circle")) {
      if (r.n <= 100) continue;
      const std::size_t count = printed_count(r.ratio * 1.005, effort);
      const double share = static_cast<double>(count) / static_cast<double>(r.n);
      least = std::min(least, share);
      sum += share;
      ++all;
      counts += fmt::format(" {}/{}", count, r.n);
    }
    fmt::print("  {:8}: mean {:.2f} %, least {:.2f} %, mean {:.0f} ms;{}\n", name(effort),
               100.0 * sum / all, 100.0 * least, milliseconds(start) / all, counts);
  }
}

/// What growers use otherwise over pots with R/r from `first` to `last` in steps of 0.25, beside
/// the record counts, or, above the ratio to which the file holds every n, beside our thorough
/// search.
void baselines_table(double first, double last, bool with_records) {
  fmt::print("\nWhat growers use otherwise, R/r = {:.2f} .. {:.2f}\n", first, last);
  const auto all = records("circle");
  double area = 0.0, square = 0.0, lattice = 0.0, rings = 0.0, ours = 0.0, best = 0.0;
  for (double ratio = first; ratio <= last; ratio += 0.25) {
    const double s = 2000.0 / ratio, m = s / 2.0;
    const packing::Outline outline{circle};
    const auto share = [&](std::size_t n) { return static_cast<double>(n); };
    best += share(with_records ? record_count(all, ratio) : printed_count(ratio, Effort::thorough));
    area += share(packing::count_by_area(circle, s));
    square += share(packing::count_by_square_grid(outline, s, m, 20));
    lattice += share(packing::count_by_hexagonal_lattice(outline, s, m, 1, 40));
    rings += share(packing::count_by_rings(outline, s, m));
    ours += share(printed_count(ratio, Effort::normal));
  }
  const auto line = [&](const char* what, double n) {
    fmt::print("  {:32} {:6.0f} bulbs, {:5.1f} %\n", what, n, 100.0 * n / best);
  };
  line(with_records ? "records" : "our own thorough search", best);
  line("this packer, normal", ours);
  line("best single hexagonal lattice", lattice);
  line("area / spacing^2", area);
  line("square grid", square);
  line("rings", rings);
}

void baselines_tables(bool thorough) {
  double complete = 0.0;  // the file holds every n up to 60
  for (const Record& r : records("circle")) complete = r.n == 60 ? r.ratio : complete;
  const double last = std::floor(complete * 4.0) / 4.0;
  baselines_table(2.0, last, true);
  if (thorough) baselines_table(last + 0.25, 12.0, false);
}

/// Printed answers: positions in whole tenths of a millimetre, pots of the record's size and 0.1 %.
void printed_table() {
  fmt::print("\nPrinted positions, n = 1..100 of the records, pot = record x 1.001\n");
  for (const Effort effort : {Effort::quick, Effort::normal}) {
    for (const double d : {40.0, 100.0}) {
      int placed = 0, all = 0;
      std::size_t missing = 0;
      const std::clock_t start = std::clock();
      for (const Record& r : records("circle")) {
        if (r.n > 100) continue;
        const Millimetres width{d * r.ratio * 1.001};
        const std::vector<PackKind> kinds{{Millimetres{d}, 1.0, 0}};
        const std::size_t n =
            pack_most({Shape::round, width, width, {}}, kinds, 0_mm, 0_mm, effort).bulbs.size();
        ++all;
        placed += n >= r.n ? 1 : 0;
        missing += n >= r.n ? 0 : r.n - n;
      }
      fmt::print(
          "  {:8} bulbs of {:3.0f} mm: {}/{} = {:.1f} %, {} bulbs missing in all, mean {:.1f} ms\n",
          name(effort), d, placed, all, 100.0 * placed / all, missing, milliseconds(start) / all);
    }
  }
}

void squares_table() {
  fmt::print("\nPrinted positions, squares of n <= 30 of the records x 1.001, normal:");
  int placed = 0, all = 0;
  const std::clock_t start = std::clock();
  for (const Record& r : records("square")) {
    if (r.n > 30) continue;
    const Millimetres side{50.0 * r.ratio * 1.001};
    const std::vector<PackKind> kinds{{100_mm, 1.0, 0}};
    const Section square{Shape::rectangle, side, side, {}};
    const bool fits = pack_most(square, kinds, 0_mm, 0_mm, Effort::normal).bulbs.size() >= r.n;
    ++all;
    placed += fits ? 1 : 0;
    if (!fits) fmt::print(" missed {}", r.n);
  }
  fmt::print(" {}/{}, mean {:.1f} ms\n", placed, all, milliseconds(start) / all);
}

void shapes_table() {
  fmt::print("\n40 mm bulbs, 25 mm gap, 10 mm wall, normal, printed positions:\n");
  const std::vector<PackKind> kinds{{40_mm, 1.0, 0}};
  std::vector<Section> sections;
  for (const auto& [l, w] : {std::pair{600.0, 200.0},
                             {800.0, 250.0},
                             {450.0, 180.0},
                             {1000.0, 300.0},
                             {700.0, 220.0},
                             {500.0, 350.0}}) {
    for (const Shape shape : {Shape::rectangle, Shape::oval, Shape::half_round}) {
      sections.push_back({shape, Millimetres{l}, Millimetres{w}, {}});
    }
  }
  for (const Section& section : sections) {
    const packing::Outline outline{section};
    const auto lattice = packing::count_by_hexagonal_lattice(outline, 65.0, 30.0, 30, 16);
    const std::clock_t start = std::clock();
    const Packing p = pack_most(section, kinds, 25_mm, 10_mm, Effort::normal);
    const double ms = milliseconds(start);
    fmt::print("  {:10} {:4.0f} x {:3.0f}: {:3}, lattice {:3}, {:+d}; bound {:3}; {:.0f} ms\n",
               word_of(section.shape), section.length.value(), section.width.value(),
               p.bulbs.size(), lattice,
               static_cast<int>(p.bulbs.size()) - static_cast<int>(lattice), p.upper_bound, ms);
  }
}

const std::vector<Section> outlines{
    {Shape::round, 250_mm, 250_mm, {}},     {Shape::round, 380_mm, 380_mm, {}},
    {Shape::round, 500_mm, 500_mm, {}},     {Shape::oval, 500_mm, 300_mm, {}},
    {Shape::oval, 600_mm, 350_mm, {}},      {Shape::rectangle, 600_mm, 200_mm, {}},
    {Shape::rectangle, 800_mm, 250_mm, {}}, {Shape::half_round, 600_mm, 250_mm, {}},
};

/// Two sizes in three shares each, and three of three sizes; the largest first.
std::vector<std::vector<PackKind>> mixtures() {
  std::vector<std::vector<PackKind>> all;
  for (const auto& [large, small] : {std::pair{50_mm, 12_mm}, std::pair{50_mm, 30_mm},
                                     std::pair{45_mm, 20_mm}, std::pair{40_mm, 30_mm}}) {
    for (const auto& [share, other] : {std::pair{1, 1}, std::pair{1, 3}, std::pair{3, 1}}) {
      all.push_back({{large, 1.0 * share, 0}, {small, 1.0 * other, 0}});
    }
  }
  for (const auto& [a, b, c] : {std::array{1, 1, 1}, std::array{2, 1, 3}, std::array{3, 1, 1}}) {
    all.push_back({{50_mm, 1.0 * a, 0}, {30_mm, 1.0 * b, 0}, {12_mm, 1.0 * c, 0}});
  }
  return all;
}

/// Times of many answers, milliseconds.
struct Times {
  double sum = 0.0, longest = 0.0;
  int count = 0;
  void add(double ms) {
    sum += ms;
    longest = std::max(longest, ms);
    ++count;
  }
};

void mixture_table() {
  const auto kinds_of_all = mixtures();
  fmt::print("\nMixtures, gap 15 mm, wall 10 mm, {} outlines x {}: bulbs in all\n", outlines.size(),
             kinds_of_all.size());
  std::size_t greedy_sum = 0;
  for (const Effort effort : {Effort::quick, Effort::normal}) {
    std::size_t sum = 0, under_greedy = 0, under_alone = 0;
    greedy_sum = 0;
    Times times;
    for (const Section& section : outlines) {
      for (const auto& kinds : kinds_of_all) {
        const std::size_t alone =
            pack_most(section, {kinds.data(), 1}, 15_mm, 10_mm, effort).bulbs.size();
        const std::size_t greedy =
            packing::count_by_greedy_fill(packing::Outline{section}, kinds, 15.0, 10.0);
        const std::clock_t start = std::clock();
        const std::size_t count = pack_most(section, kinds, 15_mm, 10_mm, effort).bulbs.size();
        times.add(milliseconds(start));
        sum += count;
        greedy_sum += greedy;
        if (count < greedy) {
          ++under_greedy;
          fmt::print("  {} of {} the greedy fill sets:", count, greedy);
          for (const PackKind& k : kinds) fmt::print(" {} x {} mm", k.share, k.diameter.value());
          fmt::print("\n");
        }
        under_alone += count < alone ? 1 : 0;
      }
    }
    fmt::print(
        "  {:8} {}; under the greedy fill {}, under the largest kind alone {}; mean {:.1f} ms, "
        "worst {:.0f} ms\n",
        name(effort), sum, under_greedy, under_alone, times.sum / times.count, times.longest);
  }
  fmt::print("  greedy fill, which may clump: {}\n", greedy_sum);
}

/// Counts that lie in what the same effort sets of itself, and are refused.
void refused_counts_table() {
  int asked = 0, refused = 0;
  Times times;
  const std::vector<PackKind> one{{40_mm, 1.0, 0}};
  for (const Section& section : outlines) {
    for (const double gap : {3.0, 15.0, 25.0}) {
      const auto most = static_cast<int>(
          pack_most(section, one, Millimetres{gap}, 10_mm, Effort::quick).bulbs.size());
      for (int count = std::max(1, most - 3); count <= most; ++count) {
        const std::vector<PackKind> kinds{{40_mm, 1.0, count}};
        const std::clock_t start = std::clock();
        refused += place_count(section, kinds, Millimetres{gap}, 10_mm, Effort::quick).bulbs.empty()
                       ? 1
                       : 0;
        times.add(milliseconds(start));
        ++asked;
      }
    }
  }
  fmt::print(
      "\nOwn counts within what is set of itself, quick: {} of {} refused; mean {:.1f} ms, "
      "worst {:.1f} ms\n",
      refused, asked, times.sum / times.count, times.longest);
}

void own_counts_table() {
  Times times;
  int misfits = 0;
  double gaps = 0.0;
  for (const Section& section : outlines) {
    for (const int count : {3, 5, 7, 10, 13, 17, 20, 25, 30, 35, 40}) {
      const std::vector<PackKind> kinds{{40_mm, 1.0, count - count / 3}, {25_mm, 1.0, count / 3}};
      const std::clock_t start = std::clock();
      const Packing p = place_count(section, kinds, 3_mm, 10_mm, Effort::quick);
      times.add(milliseconds(start));
      if (p.bulbs.empty()) {
        ++misfits;
      } else {
        gaps += p.gap.value();
      }
    }
  }
  fmt::print(
      "\nOwn counts of 3 to 40, a third of them small, {} cases, quick: gaps add up to {:.1f} mm, "
      "{} do not fit; mean {:.1f} ms, worst {:.1f} ms\n",
      times.count, gaps, misfits, times.sum / times.count, times.longest);
}

struct Timing {
  std::size_t n = 0;
  double us_a_minimisation = 0.0;
};

/// A hundred iterations of one minimisation from random places, 5 % more discs than the densest
/// packings known hold (0.84 of the area, for many), mean of several.
std::vector<Timing> scaling_table() {
  fmt::print("\n100 iterations of one minimisation, random start, 5 % too many discs:\n");
  std::vector<Timing> timings;
  for (const std::size_t n : {10UL, 20UL, 40UL, 70UL, 100UL, 200UL, 400UL, 700UL, 1000UL}) {
    const double radius = 25.0 * std::sqrt(static_cast<double>(n) / (1.05 * 0.84));
    const packing::Outline outline{
        {Shape::round, Millimetres{2.0 * radius}, Millimetres{2.0 * radius}, {}}};
    const packing::Discs discs = packing::equal_discs(n, 50.0, 25.0);
    packing::Random random{n};
    packing::Relaxer<float> relaxer;
    const int repeats = n < 200 ? 40 : 10;
    constexpr double never_stop = 1e300;
    const std::clock_t start = std::clock();
    for (int k = 0; k < repeats; ++k) {
      packing::Energy energy{outline, discs};
      auto x = packing::to_coordinates(packing::scattered_seed(outline, n, 25.0, random));
      relaxer.relax(energy, x, {0.0, 0.0, never_stop, 100});
    }
    timings.push_back({n, 1e3 * milliseconds(start) / repeats});
    const double per = timings.back().us_a_minimisation /
                       (static_cast<double>(n) * std::log2(static_cast<double>(n)));
    fmt::print("  N {:4}: {:8.0f} us, {:.2f} us per N log2 N, {:.1f} us per N\n", n,
               timings.back().us_a_minimisation, per,
               timings.back().us_a_minimisation / static_cast<double>(n));
  }
  return timings;
}

/// Log-log plot of the timings as an SVG of 480 x 320.
void plot(const std::vector<Timing>& timings, const std::string& path) {
  const auto px = [](double n) { return 60.0 + 190.0 * (std::log10(n) - 1.0); };
  const auto py = [](double us) { return 280.0 - 60.0 * (std::log10(us) - 1.0); };
  std::ofstream svg{path};
  svg << R"(<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 480 320" )"
      << R"(font-family="sans-serif" font-size="12">)"
      << "\n<title>Time of one minimisation</title>\n"
      << R"(<rect width="480" height="320" fill="white"/>)"
      << "\n";
  for (const double n : {10.0, 100.0, 1000.0}) {
    svg << fmt::format(R"(<path d="M{0:.0f} 40V280" stroke="#ccc"/><text x="{0:.0f}" y="298" )"
                       R"(text-anchor="middle">{1:.0f}</text>)",
                       px(n), n)
        << "\n";
  }
  for (const double us : {10.0, 100.0, 1000.0, 10000.0, 100000.0}) {
    svg << fmt::format(R"(<path d="M60 {0:.0f}H440" stroke="#ccc"/><text x="54" y="{1:.0f}" )"
                       R"(text-anchor="end">{2:g}</text>)",
                       py(us), py(us) + 4.0, us / 1000.0)
        << "\n";
  }
  std::string line, ideal;
  const Timing last = timings.back();
  for (const Timing& t : timings) {
    const double n = static_cast<double>(t.n), m = static_cast<double>(last.n);
    const double fit = last.us_a_minimisation * n * std::log(n) / (m * std::log(m));
    line +=
        fmt::format("{}{:.1f} {:.1f}", line.empty() ? "M" : "L", px(n), py(t.us_a_minimisation));
    ideal += fmt::format("{}{:.1f} {:.1f}", ideal.empty() ? "M" : "L", px(n), py(fit));
  }
  svg << fmt::format(R"(<path d="{}" fill="none" stroke="#888" stroke-dasharray="4 3"/>)", ideal)
      << fmt::format(R"(<path d="{}" fill="none" stroke="#2a6" stroke-width="2"/>)", line) << "\n"
      << R"(<text x="250" y="314" text-anchor="middle">discs N</text>)"
      << R"(<text x="66" y="30">ms for 100 iterations (dashed: N log N through the last point)</text>)"
      << "\n</svg>\n";
}

}  // namespace

int main(int argc, char** argv) {
  const bool quick = argc > 1 && std::string{argv[1]} == "quick";
  std::vector<Effort> efforts{Effort::quick, Effort::normal};
  if (!quick) efforts.push_back(Effort::thorough);
  large_table(efforts);
  baselines_tables(!quick);
  printed_table();
  squares_table();
  shapes_table();
  mixture_table();
  own_counts_table();
  refused_counts_table();
  const auto timings = scaling_table();
  if (argc > 2) plot(timings, argv[2]);
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  fmt::print("\nPeak memory {:.1f} MB\n", static_cast<double>(usage.ru_maxrss) / 1024.0);
}
