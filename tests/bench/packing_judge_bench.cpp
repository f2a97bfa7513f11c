// Random layouts judged in whole hundredths, by code that shares none with the packer. Usage:
// packing_judge_bench [CASES [FIRST]]; exit 1 where one does not hold.
#include <cstdio>
#include <cstdlib>
#include <string>

#include <fmt/core.h>

#include "../packing/exact_judge.hpp"

int main(int argc, char** argv) {
  std::setvbuf(stdout, nullptr, _IOLBF, 0);
  const std::size_t cases = argc > 1 ? std::strtoul(argv[1], nullptr, 10) : 5000;
  const std::size_t first = argc > 2 ? std::strtoul(argv[2], nullptr, 10) : 0;
  int faults = 0;
  for (std::size_t k = first; k < first + cases; ++k) {
    const std::string fault = judge::fault_of_case(k);
    if (fault.empty()) continue;
    ++faults;
    fmt::print("{}\n", fault);
  }
  fmt::print("{} of {} random layouts do not hold\n", faults, cases);
  return faults == 0 ? 0 : 1;
}
