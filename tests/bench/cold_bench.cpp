// Prints what places, hourly models and records cost, in user time. Run on demand:
// cmake --build build --target benchmarks && build/tests/cold_bench
// With a size in MB it also writes a records file of that size, reads it, and prints the peak of
// memory: build/tests/cold_bench 300
#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <ctime>
#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

#include <fmt/core.h>
#include <sys/resource.h>

#include "climate/place.hpp"
#include "cold/chill.hpp"
#include "cold/cold_survey.hpp"
#include "input/records_reader.hpp"

using namespace bulbwright;

namespace {

double sink = 0.0;

double user_ms() {
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  return static_cast<double>(usage.ru_utime.tv_sec) * 1e3 +
         static_cast<double>(usage.ru_utime.tv_usec) / 1e3;
}

long peak_kb() {
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  return usage.ru_maxrss;
}

template <class Work>
void measure(const char* what, int runs, Work work) {
  double least = 1e30;
  for (int run = 0; run < runs; ++run) {
    const double start = user_ms();
    work();
    least = std::min(least, user_ms() - start);
  }
  fmt::print("{:<58}{:>9.2f} ms\n", what, least);
}

std::vector<double> thirty_years() {
  std::vector<double> hours(263'000);
  for (std::size_t h = 0; h < hours.size(); ++h) {
    const auto t = static_cast<double>(h);
    hours[h] = 9 - 8 * std::cos(t / 8766 * 6.2831853) - 4 * std::cos(t / 24 * 6.2831853) +
               4 * std::sin(t / 131.7);
  }
  return hours;
}

/// All hourly models: orchard measures of the air, the pot's temperature and its cold.
void all_models(const std::vector<double>& hours) {
  ColdLedger ledger{{Day{1990, 1, 1}, Day{2030, 1, 1}}, pot_thermal(example_pot()), Exposure::open};
  for (std::size_t d = 0; d < hours.size() / 24; ++d) {
    DayHours day{};
    std::copy_n(hours.begin() + static_cast<std::ptrdiff_t>(24 * d), 24, day.begin());
    ledger.add(Day{1990, 1, 1} + static_cast<int>(d), day, true);
  }
  sink += ledger.table().total.cold_weeks;
}

void cold_from_normals() {
  const PlaceCatalogue places = PlaceCatalogue::builtin();
  const ColdPeriod period = half_year(Hemisphere::north);
  for (const Winter& winter : winters_from_normals(places.zone_profile("9b"), 2026)) {
    sink += cold_table(winter, period.starting_in(2026), pot_thermal(example_pot()), Exposure::open)
                .total.cold_weeks;
  }
}

/// A file of hourly records over 250 years, padded by a column that is passed over.
void records_file(std::size_t megabytes) {
  const std::string path =
      (std::filesystem::temp_directory_path() / "bulbwright-cold-bench.csv").string();
  constexpr int days = 250 * 365;
  const std::size_t row = megabytes * 1'000'000 / (24UL * days);
  const std::string padding(row > 25 ? row - 25 : 1, 'x');
  {
    std::ofstream file{path, std::ios::binary};
    file << "time,temperature_c,remark\n";
    for (int d = 0; d < days; ++d) {
      const std::string date = to_iso(Day{1900, 1, 1} + d);
      for (int h = 0; h < 24; ++h) {
        file << fmt::format("{}T{:02}:00,{:.1f},{}\n", date, h, 8 + 5 * std::sin(d / 58.0),
                            padding);
      }
    }
  }
  const double size = static_cast<double>(std::filesystem::file_size(path)) / 1e6;
  const long before = peak_kb();
  const double start = user_ms();
  ColdSurvey survey{half_year(Hemisphere::north), 45.0, pot_thermal(example_pot()), Exposure::open};
  input::InputFiles inputs;
  const RecordSummary summary = input::read_records(
      path, inputs, [&](const RecordedDay& day, const RecordSummary&) { survey.add(day); });
  const std::size_t winters = survey.finish().size();
  fmt::print(
      "{:.0f} MB, {} days, {} winters: {:.0f} ms, peak of memory {} kB before, {} kB after\n", size,
      summary.days, winters, user_ms() - start, before, peak_kb());
  std::filesystem::remove(path);
}

}  // namespace

int main(int argc, char** argv) {
  const std::vector<double> hours = thirty_years();
  measure("parse and check 378 places", 20,
          [] { sink += PlaceCatalogue::builtin().places()[0].latitude; });
  const PlaceCatalogue places = PlaceCatalogue::builtin();
  measure("a zone's profile", 20, [&] { sink += places.zone_profile("9b").latitude; });
  measure("portions, 263,000 hours", 5, [&] {
    DynamicModel model;
    for (const double t_c : hours) sink += model.step(t_c);
  });
  measure("orchard measures, pot and cold, 263,000 hours", 5, [&] { all_models(hours); });
  measure("three winters from normals through a pot", 10, [&] {
    for (const Winter& winter : winters_from_normals(places.places()[0], 2026)) {
      sink += pot_winter(winter, pot_thermal(example_pot()), Exposure::open).days[9].mean_c;
    }
  });
  measure("`cold` from normals, places parsed in it", 10, cold_from_normals);
  if (argc > 1) records_file(static_cast<std::size_t>(std::atoi(argv[1])));
  return std::isnan(sink) ? 1 : 0;
}
