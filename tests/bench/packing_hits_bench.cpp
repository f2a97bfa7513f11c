// How soon the search reaches the records at a millionth of slack. Usage:
// packing_hits_bench [first n] [last n] [seeds] [millions of steps]
// For every record: steps and processor time until a layout fits, for several seeds of the search.
#include <algorithm>
#include <cmath>
#include <ctime>
#include <fstream>
#include <string>
#include <vector>

#include <fmt/core.h>

#include "packing/certificate.hpp"
#include "packing/layout_search.hpp"
#include "source_paths.hpp"

using namespace bulbwright;

int main(int argc, char** argv) {
  const auto number = [&](int k, unsigned long otherwise) {
    return argc > k ? std::stoul(argv[k]) : otherwise;
  };
  const unsigned long first = number(1, 40), last = number(2, 100), seeds = number(3, 3);
  const long steps = 1'000'000L * static_cast<long>(number(4, 200));
  const double slack = argc > 5 ? std::stod(argv[5]) : 1e-6;
  const packing::Outline outline{{Shape::round, Millimetres{2000.0}, Millimetres{2000.0}, {}}};
  std::ifstream file{bulbwright::fixture::source_path("tests/vectors/packing_records.csv")};
  int runs = 0, within[3] = {0, 0, 0}, hits = 0;
  double all_ms = 0.0, log_sum = 0.0, work_sum = 0.0, all_work = 0.0, missed_ms = 0.0;
  for (std::string line; std::getline(file, line);) {
    if (line.rfind("circle,,", 0) != 0) continue;
    const auto comma = line.find(',', 8);
    const std::size_t n = std::stoul(line.substr(8));
    if (n < first || n > last) continue;
    const double s = 2000.0 / (std::stod(line.substr(comma + 1)) * (1.0 + slack));
    const packing::Discs discs = packing::equal_discs(n, s, s / 2.0);
    fmt::print("{:4}:", n);
    for (unsigned long seed = 0; seed < seeds; ++seed) {
      packing::LayoutSearch search{outline, discs, 0.8e-18 * s * s, 0x5eed + n + 1000 * seed};
      const std::clock_t start = std::clock();
      const bool fits =
          search.run(steps) && packing::violation(outline, discs, search.layout()) <= 1e-9;
      const double ms = 1e3 * static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
      fmt::print(" {:8.2f}{}", ms, fits ? ' ' : '*');
      if (!fits) fmt::print("({:.1e})", search.touching() / s);
      ++runs;
      hits += fits ? 1 : 0;
      for (int k = 0; k < 3; ++k)
        within[k] +=
            fits && static_cast<double>(search.work()) <= 2.5e6 * std::pow(10.0, k) ? 1 : 0;
      all_ms += ms;
      log_sum += std::log(std::max(0.05, ms));
      work_sum += std::log(std::max(2e4, static_cast<double>(search.work())) / 1e6);
      all_work += static_cast<double>(search.work());
      if (!fits) missed_ms += ms;
    }
    fmt::print("\n");
    std::fflush(stdout);
  }
  const double r = runs;
  fmt::print(
      "within 2.5, 25, 250 M: {:.1f} {:.1f} {:.1f} %; hit {:.1f} %; mean {:.1f} ms, mean log "
      "{:.3f}, log work {:.3f}, Msteps/ms {:.3f}, a miss {:.0f} ms\n",
      100.0 * within[0] / r, 100.0 * within[1] / r, 100.0 * within[2] / r, 100.0 * hits / r,
      all_ms / r, log_sum / r, work_sum / r, all_work / all_ms / 1e6,
      hits < runs ? missed_ms / (r - hits) : 0.0);
}
