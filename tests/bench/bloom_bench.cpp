// Time of predict_wave() per kind and winter, and of building a season from a pot's winter.
#include <chrono>

#include <fmt/core.h>

#include "catalogue/catalogue.hpp"
#include "climate/climate.hpp"
#include "climate/place.hpp"
#include "flowering/bloom.hpp"

int main() {
  using namespace bulbwright;
  using Clock = std::chrono::steady_clock;
  const auto micros = [](Clock::duration d) {
    return std::chrono::duration<double, std::micro>(d).count();
  };
  const Catalogue catalogue = builtin_catalogue();
  const PlaceCatalogue places = PlaceCatalogue::builtin();
  const auto t0 = Clock::now();
  const BloomTable table = BloomTable::builtin();
  std::vector<BloomParameters> kinds;
  for (const Taxon& taxon : catalogue.taxa()) kinds.push_back(table.of(taxon));
  const auto t1 = Clock::now();
  const PotWinter winter = pot_winter(winters_from_normals(places.find("Newport News"), 2026)[0],
                                      pot_thermal(example_pot()), Exposure::plunged);
  const auto t2 = Clock::now();
  const BloomSeason season = bloom_season(winter);
  const auto t3 = Clock::now();
  constexpr int repeats = 200;
  int sum = 0;
  for (int i = 0; i < repeats; ++i) {
    for (const BloomParameters& kind : kinds) {
      sum += predict_wave(kind, season, {Day{2026, 10, 15}, {}, Weeks{0.0}, Weeks{0.0}}).first -
             Day{2026, 10, 15};
    }
  }
  const auto t4 = Clock::now();
  fmt::print(
      "table and 60 kinds   {:8.1f} us\nseason from a winter {:8.1f} us\n"
      "one wave             {:8.2f} us  (mean first {:.1f} days after planting)\n",
      micros(t1 - t0), micros(t3 - t2), micros(t4 - t3) / (repeats * 50.0), sum / (repeats * 50.0));
}
