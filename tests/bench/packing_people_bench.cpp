// What people get: printed counts of `fit` and `plan`, beside the records, between efforts and from
// one size to the next. Usage: packing_people_bench [records] [outlines] [steps] [mixtures] [own]
// (all without an argument). Times are processor time of this process.
#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <ctime>
#include <fstream>
#include <functional>
#include <set>
#include <string>
#include <vector>

#include <fmt/core.h>

#include "packing/packing.hpp"
#include "source_paths.hpp"

using namespace bulbwright;

namespace {

constexpr std::array efforts{Effort::quick, Effort::normal, Effort::thorough};

const char* name(Effort effort) {
  return effort == Effort::quick ? "quick" : effort == Effort::normal ? "normal" : "thorough";
}

class Watch {
 public:
  void start() { since_ = std::clock(); }
  void stop() {
    const double ms = 1e3 * static_cast<double>(std::clock() - since_) / CLOCKS_PER_SEC;
    sum_ += ms;
    worst_ = std::max(worst_, ms);
    ++count_;
  }
  [[nodiscard]] std::string text() const {
    return fmt::format("{:.1f} ms (worst {:.1f})", sum_ / std::max(1, count_), worst_);
  }

 private:
  std::clock_t since_ = 0;
  double sum_ = 0.0, worst_ = 0.0;
  int count_ = 0;
};

/// Draws of our own, the same everywhere.
class Draw {
 public:
  explicit Draw(unsigned long long seed) : state_{seed} {}
  double between(double low, double high) {
    state_ = state_ * 6364136223846793005ULL + 1442695040888963407ULL;
    return low + (high - low) * static_cast<double>(state_ >> 11U) / 9007199254740992.0;
  }
  double whole(double low, double high) { return std::floor(between(low, high + 1.0)); }

 private:
  unsigned long long state_;
};

/// A layer to fill: lengths in mm.
struct Case {
  Section section;
  std::vector<PackKind> kinds;
  double gap = 25.0, wall = 10.0;
  Arrange arrange = Arrange::mixed;
};

std::size_t placed(const Case& c, Effort effort, Watch& watch) {
  watch.start();
  const Packing p =
      pack_most(c.section, c.kinds, Millimetres{c.gap}, Millimetres{c.wall}, effort, c.arrange);
  watch.stop();
  return p.bulbs.size();
}

void records_table() {
  struct Row {
    double bulb, slack;
    std::size_t most;
  };
  fmt::print("Round pots, printed counts, the file's records of n = 2..200\n");
  for (const Row& row :
       {Row{100.0, 1e-3, 200}, Row{40.0, 5e-3, 200}, Row{40.0, 1e-3, 200}, Row{200.0, 1e-6, 100}}) {
    for (const Effort effort : {Effort::quick, Effort::thorough}) {
      std::ifstream file{bulbwright::fixture::source_path("tests/vectors/packing_records.csv")};
      int all = 0, held = 0;
      Watch watch;
      for (std::string line; std::getline(file, line);) {
        const auto first = line.find(','), second = line.find(',', first + 1);
        const auto third = line.find(',', second + 1);
        if (line.substr(0, first) != "circle") continue;
        const std::size_t n = std::stoul(line.substr(second + 1, third));
        if (n < 2 || n > row.most) continue;
        const Millimetres width{row.bulb * std::stod(line.substr(third + 1)) * (1.0 + row.slack)};
        const Case c{{Shape::round, width, width, {}}, {{Millimetres{row.bulb}, 1.0, 0}}, 0.0, 0.0};
        ++all;
        held += placed(c, effort, watch) >= n ? 1 : 0;
      }
      fmt::print("  {:3.0f} mm bulbs, record x {:<8g} {:8} {:3} of {:3}, {}\n", row.bulb,
                 1.0 + row.slack, name(effort), held, all, watch.text());
    }
  }
}

Case random_case(Draw& draw, int k) {
  static constexpr std::array shapes{Shape::rectangle, Shape::oval, Shape::half_round};
  Case c;
  c.section.shape = shapes[static_cast<std::size_t>(k % 3)];
  const double length = draw.whole(250.0, 800.0);
  const bool half = c.section.shape == Shape::half_round;
  const double width = std::max(120.0, std::round(length * draw.between(0.25, half ? 0.6 : 1.0)));
  c.section.length = Millimetres{length};
  c.section.width = Millimetres{width};
  if (k % 12 == 6) c.section.corner = Millimetres{draw.whole(10.0, 50.0)};
  c.kinds = {{Millimetres{draw.whole(20.0, 50.0)}, 1.0, 0}};
  c.gap = draw.whole(5.0, 30.0);
  return c;
}

void outlines_table(int cases) {
  std::array<std::vector<std::size_t>, 3> counts;
  for (std::size_t e = 0; e < efforts.size(); ++e) {
    Draw draw{20261130};
    Watch watch;
    std::size_t sum = 0;
    for (int k = 0; k < cases; ++k) {
      counts[e].push_back(placed(random_case(draw, k), efforts[e], watch));
      sum += counts[e].back();
    }
    fmt::print("  {:8} {:6} bulbs, {}\n", name(efforts[e]), sum, watch.text());
  }
  const auto within = [&](std::size_t e, std::size_t missing) {
    int held = 0;
    for (std::size_t k = 0; k < counts[e].size(); ++k) {
      held += counts[e][k] + missing >= counts[2][k] ? 1 : 0;
    }
    return 100.0 * held / static_cast<double>(counts[e].size());
  };
  for (std::size_t e = 0; e < 2; ++e) {
    int under = 0;
    for (std::size_t k = 0; k < counts[e].size(); ++k) under += counts[e][k] > counts[e + 1][k];
    fmt::print("  {:8} as thorough {:.1f} %, within one {:.1f} %; above the next effort {}\n",
               name(efforts[e]), within(e, 0), within(e, 1), under);
  }
}

/// Cases that grow step by step.
struct Series {
  const char* name;
  Case first;
  double length = 0.0, width = 0.0, gap = 0.0;  ///< what is added a step
};

void steps_of(const std::vector<Series>& all, const std::vector<Effort>& with, int steps) {
  for (const Effort effort : with) {
    int wrong = 0, taken = 0;
    Watch watch;
    std::string where;
    for (const Series& series : all) {
      std::size_t before = 0;
      for (int k = 0; k <= steps; ++k) {
        Case c = series.first;
        c.section.length = c.section.length + Millimetres{k * series.length};
        c.section.width = c.section.width + Millimetres{k * series.width};
        c.gap += k * series.gap;
        const std::size_t n = placed(c, effort, watch);
        taken += k > 0 ? 1 : 0;
        if (n < before) {
          ++wrong;
          where += fmt::format(" {}[{}] {}>{}", series.name, k, before, n);
        }
        before = n;
      }
    }
    fmt::print("  {:8} {:3} of {} steps lose bulbs; {};{}\n", name(effort), wrong, taken,
               watch.text(), where);
  }
}

Case one(Shape shape, double length, double width, double bulb, double gap) {
  return {{shape, Millimetres{length}, Millimetres{width}, {}},
          {{Millimetres{bulb}, 1.0, 0}},
          gap,
          10.0};
}

void steps_tables(const std::vector<Effort>& with) {
  const std::vector<Series> all{
      {"trough length", one(Shape::rectangle, 600, 200, 40, 25), 1.0, 0.0, 0.0},
      {"trough width", one(Shape::rectangle, 500, 200, 40, 25), 0.0, 1.0, 0.0},
      {"trough both", one(Shape::rectangle, 500, 250, 40, 25), 1.0, 1.0, 0.0},
      {"oval length", one(Shape::oval, 500, 300, 40, 25), 1.0, 0.0, 0.0},
      {"oval width", one(Shape::oval, 600, 250, 35, 20), 0.0, 1.0, 0.0},
      {"half-round length", one(Shape::half_round, 500, 250, 40, 25), 1.0, 0.0, 0.0},
      {"half-round depth", one(Shape::half_round, 600, 200, 30, 20), 0.0, 1.0, 0.0},
      {"trough gap", one(Shape::rectangle, 700, 250, 40, 45), 0.0, 0.0, -0.2},
      {"oval gap", one(Shape::oval, 600, 300, 40, 45), 0.0, 0.0, -0.2},
      {"half-round gap", one(Shape::half_round, 600, 250, 40, 45), 0.0, 0.0, -0.2},
  };
  steps_of(all, with, 200);
}

/// Neighbours of one kind as a share of what chance would make, 1 for places given out at random.
double like_share(const Packing& p, const std::vector<PackKind>& kinds) {
  std::vector<double> of_kind(kinds.size(), 0.0);
  double like = 0.0, pairs = 0.0;
  for (std::size_t i = 0; i < p.bulbs.size(); ++i) {
    const PlacedBulb& a = p.bulbs[i];
    of_kind[a.kind] += 1.0;
    for (std::size_t j = 0; j < i; ++j) {
      const PlacedBulb& b = p.bulbs[j];
      const double want =
          (kinds[a.kind].diameter.value() + kinds[b.kind].diameter.value()) / 2.0 + p.gap.value();
      if (std::hypot(a.x_mm - b.x_mm, a.y_mm - b.y_mm) > 1.2 * want) continue;
      pairs += 1.0;
      like += a.kind == b.kind ? 1.0 : 0.0;
    }
  }
  const auto n = static_cast<double>(p.bulbs.size());
  double chance = 0.0;
  for (const double count : of_kind) chance += count * (count - 1.0) / (n * (n - 1.0));
  return like / pairs / chance;
}

void mixtures_table() {
  const std::vector<Section> sections{
      {Shape::round, 380_mm, 380_mm, {}},
      {Shape::oval, 600_mm, 350_mm, {}},
      {Shape::rectangle, 600_mm, 200_mm, {}},
      {Shape::half_round, 600_mm, 250_mm, {}},
  };
  const std::vector<std::vector<PackKind>> mixtures{
      {{40_mm, 1.0, 0}, {40_mm, 1.0, 0}}, {{40_mm, 1.0, 0}, {30_mm, 1.0, 0}},
      {{50_mm, 1.0, 0}, {30_mm, 1.0, 0}}, {{45_mm, 1.0, 0}, {20_mm, 3.0, 0}},
      {{50_mm, 1.0, 0}, {12_mm, 1.0, 0}}, {{40_mm, 1.0, 0}, {35_mm, 1.0, 0}, {30_mm, 1.0, 0}},
  };
  for (const Arrange arrange : {Arrange::mixed, Arrange::drift}) {
    for (const Effort effort : {Effort::quick, Effort::normal}) {
      Watch watch;
      std::size_t sum = 0;
      std::vector<double> like(mixtures.size(), 0.0);
      for (const Section& section : sections) {
        for (std::size_t k = 0; k < mixtures.size(); ++k) {
          watch.start();
          const Packing p = pack_most(section, mixtures[k], 15_mm, 10_mm, effort, arrange);
          watch.stop();
          sum += p.bulbs.size();
          like[k] += like_share(p, mixtures[k]) / static_cast<double>(sections.size());
        }
      }
      fmt::print("  {} {:8} {:5} bulbs, {}; like neighbours", word_of(arrange), name(effort), sum,
                 watch.text());
      for (const double share : like) fmt::print(" {:.2f}", share);
      fmt::print("\n");
    }
  }
  std::vector<Series> all;
  for (const auto& kinds : {mixtures[2], mixtures[3]}) {
    all.push_back({"round", {{Shape::round, 350_mm, 350_mm, {}}, kinds, 15.0, 10.0}, 1.0, 1.0});
    all.push_back({"trough", {{Shape::rectangle, 500_mm, 200_mm, {}}, kinds, 15.0, 10.0}, 1.0});
    all.push_back({"oval", {{Shape::oval, 400_mm, 250_mm, {}}, kinds, 15.0, 10.0}, 0.0, 1.0});
  }
  for (const Arrange arrange : {Arrange::mixed, Arrange::drift}) {
    fmt::print("  {}: one millimetre more\n", word_of(arrange));
    for (Series& series : all) series.first.arrange = arrange;
    steps_of(all, {Effort::quick}, 50);
  }
}

}  // namespace

int main(int argc, char** argv) {
  std::setvbuf(stdout, nullptr, _IOLBF, 0);
  const std::set<std::string> asked{argv + 1, argv + argc};
  const auto wanted = [&](const char* table) { return asked.empty() || asked.count(table) > 0; };
  if (wanted("records")) records_table();
  if (wanted("outlines")) {
    fmt::print("\nTroughs, ovals and half-rounds, 400 at random\n");
    outlines_table(400);
  }
  if (wanted("steps")) {
    fmt::print("\nOne millimetre more, or 0.2 mm less between: 2,000 steps\n");
    steps_tables(asked.count("fast") > 0 ? std::vector{Effort::quick}
                                         : std::vector{Effort::quick, Effort::normal});
  }
  if (wanted("mixtures")) {
    fmt::print("\nMixtures, 4 outlines of 6: bulbs in all, like neighbours to chance\n");
    mixtures_table();
  }
}
