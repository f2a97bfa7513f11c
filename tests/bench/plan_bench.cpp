// Prints the wall time of the whole program: start-up, and a three-layer plan at each effort.
// Use: cmake --build build --target benchmarks && build/tests/plan_bench
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <vector>

#include "source_paths.hpp"

namespace {

double median_ms(const std::string& command, int runs) {
  std::vector<double> times;
  for (int i = 0; i < runs; ++i) {
    const auto start = std::chrono::steady_clock::now();
    if (std::system(command.c_str()) != 0) std::printf("failed: %s\n", command.c_str());
    const std::chrono::duration<double, std::milli> taken =
        std::chrono::steady_clock::now() - start;
    times.push_back(taken.count());
  }
  std::sort(times.begin(), times.end());
  return times[times.size() / 2];
}

}  // namespace

int main() {
  const std::string program = BULBWRIGHT_BINARY;
  const std::string pot = " plan " + bulbwright::fixture::source_path("examples/steps.json") +
                          " --format json --effort ";
  std::printf("median wall time of whole processes, shell included, ms\n");
  std::printf("  an empty command           %7.1f\n", median_ms("true", 41));
  std::printf("  start-up (--version)       %7.1f\n",
              median_ms(program + " --version >/dev/null", 41));
  for (const char* effort : {"quick", "normal", "thorough"}) {
    std::printf("  three-layer plan, %-8s %7.1f\n", effort,
                median_ms(program + pot + effort + " >/dev/null", effort[0] == 'q' ? 41 : 9));
  }
  return 0;
}
