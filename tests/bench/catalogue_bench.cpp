// Prints how long the built-in catalogue takes to parse and check. Run on demand:
// cmake --build build --target benchmarks && build/tests/catalogue_bench

#include <algorithm>
#include <chrono>
#include <vector>

#include <fmt/core.h>

#include "catalogue/catalogue.hpp"

int main() {
  constexpr int runs = 200;
  std::vector<double> ms;
  std::size_t facts = 0;
  for (int run = 0; run < runs; ++run) {
    const auto start = std::chrono::steady_clock::now();
    const bulbwright::Catalogue catalogue = bulbwright::builtin_catalogue();
    const auto end = std::chrono::steady_clock::now();
    ms.push_back(std::chrono::duration<double, std::milli>(end - start).count());
    facts = 0;
    for (const bulbwright::Taxon& taxon : catalogue.taxa()) facts += taxon.facts.size();
  }
  std::sort(ms.begin(), ms.end());
  fmt::print("catalogue: {} facts, parse and check: least {:.2f} ms, median {:.2f} ms of {} runs\n",
             facts, ms.front(), ms[ms.size() / 2], runs);
}
