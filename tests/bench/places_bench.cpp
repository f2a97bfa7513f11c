// How well a place is blended from the stations around it: 600 stations of the table, evenly over
// it, are left out one by one, and their months November to April (May to October in the south)
// compared with what the others give. Beside it the plainer ways. Use: places_bench [all]
#include <algorithm>
#include <chrono>
#include <cmath>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include <fmt/core.h>

#include "climate/blend.hpp"

using namespace bulbwright;

namespace {

std::vector<std::size_t> cold_months(double latitude) {
  if (latitude >= 0) return {10, 11, 0, 1, 2, 3};
  return {4, 5, 6, 7, 8, 9};
}

double quantile(std::vector<double> values, double share) {
  std::sort(values.begin(), values.end());
  const double at = share * static_cast<double>(values.size() - 1);
  const auto i = static_cast<std::size_t>(at);
  if (i + 1 >= values.size()) return values.back();
  return values[i] + (at - static_cast<double>(i)) * (values[i + 1] - values[i]);
}

/// Absolute errors over stations and months, kelvin.
struct Errors {
  std::vector<double> mean, low, high;
  int stations = 0;

  void add(const Station& truth, const MonthlyNormals& found) {
    ++stations;
    for (const std::size_t m : cold_months(truth.position.latitude)) {
      const double a = found.tmin_c[m] - truth.normals.tmin_c[m];
      const double b = found.tmax_c[m] - truth.normals.tmax_c[m];
      low.push_back(std::abs(a));
      high.push_back(std::abs(b));
      mean.push_back(std::abs(a + b) / 2);
    }
  }
  void print(std::string_view name) const {
    fmt::print("| {} | {} | {:.2f} ({:.2f}) | {:.2f} ({:.2f}) | {:.2f} ({:.2f}) |\n", name,
               stations, quantile(mean, 0.5), quantile(mean, 0.9), quantile(low, 0.5),
               quantile(low, 0.9), quantile(high, 0.5), quantile(high, 0.9));
  }
};

std::string region_of(const Station& s) {
  const auto among = [&](std::string_view codes) { return codes.find(s.country) != codes.npos; };
  if (among("GB IE IM JE GG")) return "Britain and Ireland";
  if (among("FR BE NL LU DE CH AT CZ SK HU SI PL")) return "France to Poland and Hungary";
  if (among("NO SE FI DK IS EE LV LT")) return "Nordic and Baltic countries";
  if (among("ES PT IT GR HR CY MT AL ME MK BA RS BG TR IL LB SY TN DZ MA LY EG")) {
    return "Mediterranean and Balkans";
  }
  if (among("RU UA BY MD RO KZ GE AM AZ")) return "Romania to Russia";
  if (s.country == "CA" || s.region == "AK") return "Canada and Alaska";
  if (s.country == "US") {
    return s.position.longitude < -105 ? "United States, west of 105 W"
                                       : "United States, east of it";
  }
  if (among("CN JP KR KP TW MN")) return "China, Japan, Korea";
  if (among("AU NZ")) return "Australia, New Zealand";
  if (among("ZA LS SZ NA BW ZW")) return "southern Africa";
  if (among("AR CL UY")) return "Argentina, Chile, Uruguay";
  return "elsewhere";
}

MonthlyNormals mean_of(const std::vector<Station>& around, const Station& here, std::size_t count,
                       double lapse_k_per_km) {
  MonthlyNormals normals;
  double weights = 0.0;
  for (std::size_t i = 0; i < count; ++i) {
    const double weight = std::pow(distance_km(around[i].position, here.position) + 10, -2);
    const double warmer = lapse_k_per_km * (around[i].elevation_m - here.elevation_m) / 1000;
    weights += weight;
    for (std::size_t m = 0; m < 12; ++m) {
      normals.tmin_c[m] += weight * (around[i].normals.tmin_c[m] + warmer);
      normals.tmax_c[m] += weight * (around[i].normals.tmax_c[m] + warmer);
    }
  }
  for (std::size_t m = 0; m < 12; ++m) {
    normals.tmin_c[m] /= weights;
    normals.tmax_c[m] /= weights;
  }
  return normals;
}

/// Errors met by what was expected of them.
void print_expected(std::vector<std::pair<double, double>> expected_and_met) {
  std::sort(expected_and_met.begin(), expected_and_met.end());
  fmt::print(
      "\n| error expected, K | met: root of mean square | within expected | nine in ten "
      "|\n|---|---|---|---|\n");
  constexpr std::size_t groups = 5;
  const std::size_t n = expected_and_met.size();
  for (std::size_t g = 0; g < groups; ++g) {
    double expected = 0.0, squares = 0.0;
    std::vector<double> met;
    double within = 0.0;
    for (std::size_t i = n * g / groups; i < n * (g + 1) / groups; ++i) {
      expected += expected_and_met[i].first;
      squares += std::pow(expected_and_met[i].second, 2);
      met.push_back(expected_and_met[i].second);
      within += met.back() <= expected_and_met[i].first ? 1 : 0;
    }
    const auto count = static_cast<double>(met.size());
    fmt::print("| {:.2f} | {:.2f} | {:.0f} % | {:.2f} |\n", expected / count,
               std::sqrt(squares / count), 100 * within / count, quantile(met, 0.9));
  }
}

}  // namespace

int main(int count, char** values) {
  const StationTable table = StationTable::builtin();
  const bool all = count > 1 && std::string_view{values[1]} == "all";
  const std::size_t tested = all ? table.size() : 600;
  Errors nearest, moved, six, blend, flat;
  std::map<std::string, Errors> regions;
  std::vector<std::pair<double, double>> expected_and_met;
  std::vector<double> rain;
  double seconds = 0.0;
  for (std::size_t k = 0; k < tested; ++k) {
    const std::size_t i = k * table.size() / tested;
    const Station here = table.station(i);
    std::vector<Station> around;
    for (const auto& near : table.nearest(here.position, blended_stations + 1)) {
      if (near.index != i) around.push_back(table.station(near.index));
    }
    around.resize(blended_stations, around.back());
    nearest.add(here, around.front().normals);
    moved.add(here, mean_of(around, here, 1, 6.0));
    six.add(here, mean_of(around, here, 6, 6.0));
    const auto start = std::chrono::steady_clock::now();
    const Blend found = blended(around, here.position, here.elevation_m);
    seconds += std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
    blend.add(here, found.normals);
    flat.add(here, blended(around, here.position, std::nullopt).normals);
    regions[region_of(here)].add(here, found.normals);
    double fallen = 0.0, said = 0.0;
    for (const std::size_t m : cold_months(here.position.latitude)) {
      const double error = (found.normals.tmin_c[m] - here.normals.tmin_c[m] +
                            found.normals.tmax_c[m] - here.normals.tmax_c[m]) /
                           2;
      expected_and_met.emplace_back(found.error_k[m], std::abs(error));
      fallen += here.rain_mm[m];
      said += found.rain_mm[m];
    }
    if (fallen >= 60) rain.push_back(std::abs(said / fallen - 1));
  }
  fmt::print("{} of {} stations left out one by one, winter half year, K: median (nine in ten)\n\n",
             tested, table.size());
  fmt::print("| | stations | mean | minimum | maximum |\n|---|---|---|---|---|\n");
  nearest.print("nearest station");
  moved.print("nearest, moved by 6 K/km");
  six.print("six nearest by (km + 10)^-2, moved by 6 K/km");
  blend.print("blended");
  flat.print("blended, height not told");
  for (const auto& [name, errors] : regions) errors.print(name);
  print_expected(std::move(expected_and_met));
  fmt::print("\nrain of the half year: off by {:.0f} % in the median, {:.0f} % in nine of ten\n",
             100 * quantile(rain, 0.5), 100 * quantile(rain, 0.9));
  fmt::print("blending takes {:.0f} microseconds\n", 1e6 * seconds / static_cast<double>(tested));
}
