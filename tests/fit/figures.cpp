#include "figures.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

#include <fmt/core.h>

#include "climate/climate.hpp"
#include "cold/pot_temperature.hpp"

namespace bulbwright::fit {
namespace {

double median(std::vector<double> values) {
  if (values.empty()) return 0.0;
  std::sort(values.begin(), values.end());
  const std::size_t n = values.size();
  return (values[(n - 1) / 2] + values[n / 2]) / 2;
}

template <class Member>
std::vector<double> errors(std::span<const Judged> rows, Member member) {
  std::vector<double> found;
  for (const Judged& j : rows) {
    if (member(*j.row)) found.push_back(j.error);
  }
  return found;
}

double median_size(std::vector<double> values) {
  for (double& value : values) value = std::abs(value);
  return median(std::move(values));
}

double rmse(const std::vector<double>& values) {
  double squares = 0.0;
  for (const double v : values) squares += v * v;
  return values.empty() ? 0.0 : std::sqrt(squares / static_cast<double>(values.size()));
}

bool is_published(const Observation& o) {
  return o.kept == Kept::published && !o.check && !o.more && o.says == Says::date;
}
bool is_tulip_peak(const Observation& o) {
  return is_published(o) && o.taxon == "tulip-triumph" && o.event == Event::peak;
}
bool is_pool(const Observation& o) {
  return is_published(o) && ((o.label == "tulip-early" && o.event == Event::first) ||
                             (o.label == "tulip-any" && o.event == Event::first) ||
                             (o.label == "narcissus-mid" && o.event == Event::peak));
}

/// Means over the rows of one place, label and event.
template <class Member>
std::vector<double> means(std::span<const Judged> rows, Member member) {
  std::map<std::string, std::pair<double, int>> sums;
  for (const Judged& j : rows) {
    if (!member(*j.row)) continue;
    auto& [sum, n] =
        sums[fmt::format("{}|{}|{}", j.row->place, j.row->label, static_cast<int>(j.row->event))];
    sum += j.error;
    ++n;
  }
  std::vector<double> result;
  for (const auto& [key, s] : sums) result.push_back(s.first / s.second);
  return result;
}

constexpr int least_dated = 10;
constexpr std::array groups{"tulips", "daffodils", "small kinds", "tender kinds"};

std::size_t group_index(const std::string& taxon) {
  const auto found = std::find(groups.begin(), groups.end(), std::string_view{group_name(taxon)});
  return static_cast<std::size_t>(found - groups.begin());
}
bool in_ranges(const Observation& o) {
  return o.dated() && !o.check && o.place != "practice" && o.kept != Kept::treatments;
}

}  // namespace

const char* group_name(const std::string& taxon) {
  if (taxon.starts_with("tulip")) return "tulips";
  if (taxon == "narcissus-tazetta-tender") return "tender kinds";
  if (taxon.starts_with("narcissus")) return "daffodils";
  for (const char* tender : {"freesia", "ixia", "sparaxis", "ranunculus"}) {
    if (taxon == tender) return "tender kinds";
  }
  return "small kinds";
}

std::vector<Judged> judge(const Evidence& evidence, const ParametersOf& parameters) {
  std::vector<Judged> judged;
  for (const Observation& row : evidence.rows) {
    const BloomParameters kind = parameters(row, row.taxon);
    const BloomParameters other =
        row.other.empty() || row.other == row.taxon ? kind : parameters(row, row.other);
    const Ground& ground = evidence.grounds[row.ground];
    Judged j{&row, miss(row, kind, other, ground.normal), 0.0};
    if (row.says == Says::date) {
      j.half_winters = std::abs(predicted(kind, ground.cold, row.planting, row.event) -
                                predicted(kind, ground.mild, row.planting, row.event)) /
                       2;
    }
    judged.push_back(j);
  }
  return judged;
}

void print_figures(std::span<const Judged> rows, bool list_stored) {
  const auto garden_date = [](const Observation& o) {
    return o.kept == Kept::gardens && o.named && o.dated() && !o.check;
  };
  fmt::print(
      "| dated firsts and peaks of gardens | n | median error | median of sizes | RMSE |\n"
      "|---|---|---|---|---|\n");
  for (const char* group : {"tulips", "daffodils", "small kinds", "tender kinds"}) {
    const auto e = errors(rows, [&](const Observation& o) {
      return garden_date(o) && std::string{group} == group_name(o.taxon);
    });
    fmt::print("| {} | {} | {:+.1f} | {:.1f} | {:.1f} |\n", group, e.size(), median(e),
               median_size(e), rmse(e));
  }
  fmt::print(
      "\n| kind with four dates or more | n | median error | median of sizes |\n"
      "|---|---|---|---|\n");
  std::map<std::string, int> counts;
  for (const Judged& j : rows) counts[j.row->taxon] += garden_date(*j.row) ? 1 : 0;
  for (const auto& [taxon, n] : counts) {
    if (n < 4) continue;
    const auto e = errors(rows, [&, name = taxon](const Observation& o) {
      return garden_date(o) && o.taxon == name;
    });
    fmt::print("| {} | {} | {:+.1f} | {:.1f} |\n", taxon, n, median(e), median_size(e));
  }
  const auto seen = [](const Observation& o) {
    return o.kept == Kept::gardens && o.named && o.says == Says::open;
  };
  int open = 0, within = 0, near = 0;
  for (const Judged& j : rows) {
    if (!seen(*j.row)) continue;
    ++open;
    within += j.error == 0.0 ? 1 : 0;
    near += std::abs(j.error) <= 7.0 ? 1 : 0;
  }
  fmt::print("\nseen open: {} days, {:.0f} % in the wave, {:.0f} % within a week of it\n", open,
             100.0 * within / std::max(1, open), 100.0 * near / std::max(1, open));
  const auto stored = [](const Observation& o) { return o.kept == Kept::stored && !o.check; };
  const auto all = errors(rows, stored);
  const auto dated =
      errors(rows, [&](const Observation& o) { return stored(o) && o.says == Says::date; });
  fmt::print(
      "refrigerated cases: {}, median size {:.1f}, RMSE {:.1f}; dated {}: median {:+.1f}, "
      "size {:.1f}\n",
      all.size(), median_size(all), rmse(all), dated.size(), median(dated), median_size(dated));
  for (const Judged& j : rows) {
    if (!list_stored || !stored(*j.row)) continue;
    const Observation& o = *j.row;
    const auto day = [](double x) { return to_iso(Day{} + static_cast<int>(x)).substr(5); };
    fmt::print("  {:24} {:10} {:4.0f} weeks {} {:5} {} {} {:+.0f}\n", o.place.substr(0, 24),
               o.label.substr(0, 10), o.planting.stored.value(),
               to_iso(o.planting.planted).substr(5),
               o.says == Says::open     ? "open"
               : o.event == Event::peak ? "peak"
                                        : "first",
               day(o.low), day(o.high), j.error);
  }
  fmt::print("published places: tulip peaks RMSE {:.1f}, pooled {:.1f}, all natural {:.1f}\n",
             rmse(means(rows, is_tulip_peak)), rmse(means(rows, is_pool)),
             rmse(means(rows, is_published)));
}

SpreadLaw calibrated(std::span<const Judged> rows) {
  SpreadLaw best;
  double best_cost = 1e99;
  for (double share = 0.3; share <= 1.01; share += 0.1) {
    double cost = 0.0;
    for (std::size_t g = 0; g < groups.size(); ++g) {
      double least = 1e99;
      for (double spread = 3.0; spread <= 30.0; spread += 0.5) {
        double c = 0.0;
        for (const Judged& j : rows) {
          if (!in_ranges(*j.row) || j.row->kept == Kept::stored) continue;
          if (group_index(j.row->taxon) != g) continue;
          const double sd = std::hypot(share * j.half_winters, spread);
          // Student's t of four degrees: a few rows are of another world.
          c += std::log(sd) + 2.5 * std::log(1 + j.error * j.error / (4 * sd * sd));
        }
        least = std::min(least, c);
      }
      cost += least;
    }
    if (cost < best_cost) {
      best_cost = cost;
      best.winter_share = share;
    }
  }
  const auto holding = [&](const auto& member, auto sd_of) {
    for (double spread = 0.0; spread < 40.0; spread += 0.5) {
      int n = 0, within = 0;
      for (const Judged& j : rows) {
        if (!in_ranges(*j.row) || !member(*j.row)) continue;
        ++n;
        within += std::abs(j.error) <= std::round(1.2816 * sd_of(j, spread)) ? 1 : 0;
      }
      if (within >= 0.8 * n) return spread;
    }
    return 40.0;
  };
  for (std::size_t g = 0; g < groups.size(); ++g) {
    best.spread[g] = holding(
        [&](const Observation& o) { return o.kept != Kept::stored && group_index(o.taxon) == g; },
        [&](const Judged& j, double spread) {
          return std::hypot(best.winter_share * j.half_winters, spread);
        });
  }
  // A handful of dates tells no spread: half as wide again as of the small kinds.
  const auto dated_of = [&](std::size_t g) {
    return std::ranges::count_if(
        rows, [&](const Judged& j) { return in_ranges(*j.row) && group_index(j.row->taxon) == g; });
  };
  for (std::size_t g = 0; g < groups.size(); ++g) {
    if (dated_of(g) < least_dated) best.spread[g] = 1.5 * best.spread[2];
  }
  best.stored = holding([](const Observation& o) { return o.kept == Kept::stored; },
                        [&](const Judged& j, double spread) {
                          return std::hypot(std::hypot(best.winter_share * j.half_winters,
                                                       best.spread[group_index(j.row->taxon)]),
                                            spread);
                        });
  return best;
}

void print_coverage(std::span<const Judged> rows, const SpreadLaw& law) {
  fmt::print("winter_share {:.1f}, spread {:.1f} {:.1f} {:.1f} {:.1f}, stored {:.1f}\n",
             law.winter_share, law.spread[0], law.spread[1], law.spread[2], law.spread[3],
             law.stored);
  fmt::print("\n| dated rows | n | in the range of four in five | +- days |\n|---|---|---|---|\n");
  const auto line = [&](const char* name, const auto& member) {
    int n = 0, within = 0;
    double width = 0.0;
    for (const Judged& j : rows) {
      if (!in_ranges(*j.row) || !member(*j.row)) continue;
      const double stored = j.row->kept == Kept::stored ? law.stored : 0.0;
      const double days =
          std::round(1.2816 * std::hypot(std::hypot(law.winter_share * j.half_winters,
                                                    law.spread[group_index(j.row->taxon)]),
                                         stored));
      ++n;
      width += days;
      within += std::abs(j.error) <= days ? 1 : 0;
    }
    fmt::print("| {} | {} | {:.0f} % | {:.0f} |\n", name, n, 100.0 * within / std::max(1, n),
               width / std::max(1, n));
  };
  for (std::size_t g = 0; g < groups.size(); ++g) {
    line(groups[g],
         [&](const Observation& o) { return o.kept != Kept::stored && group_index(o.taxon) == g; });
  }
  line("stored bulbs", [](const Observation& o) { return o.kept == Kept::stored; });
  for (std::size_t g = 0; g < 3; ++g) {
    line(fmt::format("{}, gardens alone", groups[g]).c_str(), [&](const Observation& o) {
      return o.kept == Kept::gardens && o.named && group_index(o.taxon) == g;
    });
  }
}

void print_order(const std::function<BloomParameters(const std::string&)>& parameters,
                 const Catalogue& catalogue) {
  const PlaceCatalogue places = PlaceCatalogue::builtin();
  struct Town {
    const char* name;
    double lat, lon;
  };
  const std::array towns{Town{"London", 51.5, -0.1},       Town{"Seattle", 47.6, -122.3},
                         Town{"Boston", 42.4, -71.1},      Town{"Amsterdam", 52.4, 4.9},
                         Town{"Sacramento", 38.6, -121.5}, Town{"Los Angeles", 34.05, -118.2},
                         Town{"Austin", 30.3, -97.7},      Town{"Melbourne", -37.8, 145.0}};
  struct Line {
    double first = 0.0;
    std::string text;
  };
  std::vector<std::vector<Line>> columns;
  for (const Town& town : towns) {
    const Place& place = *places.nearest(town.lat, town.lon, 1).at(0).place;
    const BloomSeason season = bloom_season(pot_winter(winters_from_normals(place, 2026)[0],
                                                       pot_thermal(example_pot()), Exposure::open));
    std::vector<Line> lines;
    for (const Taxon& taxon : catalogue.taxa()) {
      BloomPlanting planting;
      planting.planted = town.lat > 0 ? Day{2026, 11, 1} : Day{2026, 5, 1};
      planting.state = BulbState::dry;
      const Wave wave = predict_wave(parameters(taxon.id), season, planting);
      const std::string when = wave.flowers ? to_iso(wave.first).substr(5) : "--";
      lines.push_back({wave.first_exact, when + " " + taxon.id});
      if (!wave.flowers) lines.back().first = 1e9;
    }
    std::ranges::stable_sort(lines, {}, &Line::first);
    columns.push_back(std::move(lines));
  }
  for (std::size_t half = 0; half < 2; ++half) {
    for (std::size_t t = 4 * half; t < 4 * half + 4; ++t) fmt::print("{:30}", towns[t].name);
    fmt::print("\n");
    for (std::size_t i = 0; i < columns[0].size(); ++i) {
      for (std::size_t t = 4 * half; t < 4 * half + 4; ++t) fmt::print("{:30}", columns[t][i].text);
      fmt::print("\n");
    }
    fmt::print("\n");
  }
}

void print_warmth(const std::function<BloomParameters(const std::string&)>& parameters) {
  const PlaceCatalogue places = PlaceCatalogue::builtin();
  constexpr std::array kinds{"tulip-triumph",     "tulip-single-late", "narcissus-large-cupped",
                             "narcissus-trumpet", "crocus-large",      "muscari"};
  fmt::print("\nfirst flower against today's, days, in a climate 3 K cooler to 3 K warmer\n");
  for (const char* name : {"Omaha", "Chicago", "Boston", "De Bilt", "London, England", "Seattle",
                           "Raleigh", "Dallas", "Sacramento", "Los Angeles"}) {
    const Place& today = places.find(name);
    for (const std::string id : kinds) {
      std::string line = fmt::format("{:16} {:4} {:24}", name, today.zone, id);
      const BloomParameters kind = parameters(id);
      double at_home = 0.0;
      std::array<double, 7> first{};
      for (int k = -3; k <= 3; ++k) {
        Place place = today;
        for (std::size_t m = 0; m < 12; ++m) {
          place.normals.tmin_c[m] += k;
          place.normals.tmax_c[m] += k;
        }
        BloomPlanting planting;
        planting.planted = Day{2026, 11, 1};
        planting.state = BulbState::dry;
        const Wave wave =
            predict_wave(kind,
                         bloom_season(pot_winter(winters_from_normals(place, 2026)[0],
                                                 pot_thermal(example_pot()), Exposure::open)),
                         planting);
        first[static_cast<std::size_t>(k + 3)] = wave.flowers ? wave.first_exact : 1e9;
        if (k == 0) at_home = wave.first_exact;
      }
      for (const double day : first) {
        line += day < 1e8 ? fmt::format(" {:+6.1f}", day - at_home) : "     --";
      }
      if (first.back() < 1e8) line += fmt::format("   {:+.1f} days/K", (first[6] - first[0]) / 6);
      fmt::print("{}\n", line);
    }
  }
}

}  // namespace bulbwright::fit
