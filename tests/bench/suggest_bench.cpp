// Prints what a search over all stacks costs, in user time, and how many stacks it weighs. Run on
// demand: cmake --build build --target benchmarks && build/tests/suggest_bench
#include <fmt/core.h>
#include <sys/resource.h>

#include "plan/terrace_fixture.hpp"
#include "suggest/suggestion.hpp"

using namespace bulbwright;

namespace {

double user_ms() {
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  return static_cast<double>(usage.ru_utime.tv_sec) * 1e3 +
         static_cast<double>(usage.ru_utime.tv_usec) / 1e3;
}

void measure(const char* zone, int layers, double height_mm) {
  const PlaceSeason place_season = terrace::setting_of(zone);
  terrace::Bench bench{place_season};
  Request request = terrace::terrace_pot({});
  request.pot.height = Millimetres{height_mm};
  SuggestionWish wish;
  wish.window = {Day{2027, 2, 15}, Day{2027, 4, 30}};
  wish.most_layers = layers;
  const double before = user_ms();
  const Suggestions result = suggest(request, wish, bench.context());
  const double cost = user_ms() - before;
  fmt::print("{:>4}  {:>6}  {:>7}  {:>8}  {:>9}  {:>9.0f}\n", zone, layers,
             result.kinds - static_cast<int>(result.left_out.size()), result.stacks, result.fitting,
             cost);
}

}  // namespace

int main() {
  terrace::catalogue(), terrace::blooms(), terrace::places();
  fmt::print("Full catalogue, 380 mm pot, flowers 15 Feb to 30 Apr\n");
  fmt::print("zone  layers    kinds    stacks    fitting    user ms\n");
  for (const char* zone : {"5b", "7a", "8b", "9b", "10b"}) measure(zone, 3, 360.0);
  for (const char* zone : {"7a", "9b"}) measure(zone, 4, 520.0);
}
