// Any bytes as a file of temperature records: read, or refused with an InputError whose text keeps
// its limits; the days that are read run forward, with air that can be believed. Run from a corpus:
//   build/fuzz/tests/records_fuzz -dict=tests/fuzz/records.dict -max_len=20000 -timeout=10
//     -rss_limit_mb=2048 CORPUS tests/vectors/noaa
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>

#include <sys/mman.h>
#include <unistd.h>

#include "base/error.hpp"
#include "input/records_reader.hpp"

using namespace bulbwright;

namespace {

void require(bool holds) {
  if (!holds) std::abort();
}

bool believed(double t_c) {
  return t_c >= input::least_air_c - 1e-6 && t_c <= input::most_air_c + 1e-6;
}

/// A file in memory with a path of its own, written anew for every input.
class MemoryFile {
 public:
  MemoryFile()
      : descriptor_{memfd_create("records.csv", 0)},
        path_{"/proc/self/fd/" + std::to_string(descriptor_)} {
    require(descriptor_ >= 0);
  }
  [[nodiscard]] const std::string& holding(const std::uint8_t* data, std::size_t size) const {
    require(ftruncate(descriptor_, 0) == 0);
    require(pwrite(descriptor_, data, size, 0) == static_cast<ssize_t>(size));
    return path_;
  }

 private:
  int descriptor_;
  std::string path_;
};

void check(const RecordedDay& day) {
  require(believed(day.air.tmin_c) && believed(day.air.tmax_c));
  require(day.air.tmin_c <= day.air.tmax_c + 1e-9);
  if (!day.hours) return;
  for (const double t_c : *day.hours) require(believed(t_c));
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const MemoryFile file;
  const std::string& path = file.holding(data, size);
  std::optional<Day> before;
  long days = 0;
  input::InputFiles inputs;
  try {
    const RecordSummary summary =
        input::read_records(path, inputs, [&](const RecordedDay& day, const RecordSummary&) {
          require(!before || *before < day.day);
          before = day.day;
          ++days;
          check(day);
        });
    require(summary.days == days && summary.filled_days <= days && summary.gap_count >= 0);
    require(summary.gaps.size() <= 20 && summary.filled_hours <= 24 * days);
  } catch (const InputError& error) {
    require(!error.faults().empty() && error.faults().size() <= 101);
    const std::string message = describe(error);
    require(!message.empty() && message.ends_with('\n'));
  }
  return 0;
}
