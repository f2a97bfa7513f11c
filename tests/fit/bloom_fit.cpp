// Fits data/bloom.csv to published bloom dates and forcing tables and prints how well it does.
//   bloom_fit                      fit, errors in and out of sample, calibration
//   bloom_fit --write FILE         and write the table
//   bloom_fit --quick              without leaving sites out
//   bloom_fit --all                and every place's error
// Method: docs/bloom.md.
#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <cstring>
#include <fstream>
#include <functional>
#include <map>
#include <numeric>
#include <set>
#include <sstream>

#include <fmt/core.h>

#include "bloom_records.hpp"
#include "climate/day_length.hpp"
#include "least_squares.hpp"
#include "source_paths.hpp"

namespace bulbwright::fit {
namespace {

constexpr int classes = 8;

/// A shared figure that is fitted: prior mean and deviation.
struct Shared {
  const char* name;
  double BloomParameters::*member;
  double mean, sd, least, most;
};
const std::array shared{
    Shared{"fold_weeks", &BloomParameters::fold_weeks, 3.0, 0.7, 0.5, 6.0},
    Shared{"unchilled_rate", &BloomParameters::unchilled_rate, 0.20, 0.04, 0.03, 0.5},
    Shared{"storage_credit", &BloomParameters::storage_credit, 1.5, 0.25, 1.0, 2.5},
    Shared{"half_light_h", &BloomParameters::half_light_h, 11.5, 0.5, 9.0, 13.0},
    Shared{"light_width_h", &BloomParameters::light_width_h, 0.6, 0.2, 0.2, 2.0},
    Shared{"storage_relief", &BloomParameters::storage_relief, 0.4, 0.25, 0.0, 1.0},
};
/// Share of the rate left in short days, by group: tulips, daffodils, all others.
const std::array<double, 3> dark_mean{0.10, 0.25, 0.25};
const std::array<double, 3> dark_sd{0.05, 0.15, 0.15};
const std::array<const char*, 3> group_names{"tulips", "daffodils", "others"};

/// Prior heat sums to first flowers by season class; class 8 by forcing weeks instead.
const std::array<double, classes> class_mean{80, 125, 120, 190, 250, 320, 400, 0};
constexpr double class_sd = 0.25;     // of the logarithm
constexpr double taxon_sd = 0.30;     // a kind about its class
constexpr double forced_heat = 17.0;  // a day at 16 degC ("about 15 to 18"), above -1

std::size_t group_of(const Taxon& taxon) {
  return taxon.genus == "Tulipa" ? 0 : taxon.genus == "Narcissus" ? 1 : 2;
}
bool tender(const Taxon& taxon) {
  return taxon.cold_weeks.value <= 3.0;
}
bool by_forcing(const Taxon& taxon) {
  return taxon.season_class == classes || tender(taxon);
}

struct Fit {
  Catalogue catalogue = builtin_catalogue();
  BloomTable table = BloomTable::builtin();
  BloomData data;
  std::vector<std::string> seen;  ///< taxa with dates

  [[nodiscard]] std::size_t size() const {
    return shared.size() + dark_mean.size() + classes + seen.size();
  }
  [[nodiscard]] std::vector<double> start() const {
    std::vector<double> x;
    for (const Shared& s : shared) x.push_back(s.mean);
    x.insert(x.end(), dark_mean.begin(), dark_mean.end());
    x.resize(size(), 0.0);  // class and taxon effects are logarithms about their means
    return x;
  }
  [[nodiscard]] std::vector<double> prior_sd() const {
    std::vector<double> sd;
    for (const Shared& s : shared) sd.push_back(s.sd);
    sd.insert(sd.end(), dark_sd.begin(), dark_sd.end());
    sd.insert(sd.end(), classes, class_sd);
    sd.insert(sd.end(), seen.size(), taxon_sd);
    return sd;
  }
  [[nodiscard]] BloomParameters kind(const std::vector<double>& x, const std::string& id) const {
    const Taxon& taxon = catalogue.at(id);
    BloomParameters p = table.of(taxon);
    std::size_t i = 0;
    for (const Shared& s : shared) p.*s.member = std::clamp(x[i++], s.least, s.most);
    p.dark_rate = tender(taxon) ? 1.0 : std::clamp(x[i + group_of(taxon)], 0.02, 1.0);
    i += dark_mean.size();
    double log_sum = 0.0;
    if (by_forcing(taxon)) {
      const double light =
          p.dark_rate +
          (1 - p.dark_rate) / (1 + std::exp(-(12.5 - p.half_light_h) / p.light_width_h));
      log_sum = std::log(taxon.weeks_to_flower_forcing.value * 7 * forced_heat * light);
    } else {
      const auto c = static_cast<std::size_t>(std::clamp(taxon.season_class, 1, classes) - 1);
      log_sum = std::log(class_mean[c]) + x[i + c];
    }
    i += classes;
    const auto at = std::find(seen.begin(), seen.end(), id);
    if (at != seen.end()) log_sum += x[i + static_cast<std::size_t>(at - seen.begin())];
    p.heat_sum = std::exp(log_sum);
    return p;
  }
};

double predicted(const BloomParameters& kind, const BloomTarget& t, const BloomSeason& season) {
  const Wave wave = predict_wave(kind, season, t.planting);
  if (!wave.flowers) return season.last().serial();
  return t.event == Event::first ? wave.first_exact : wave.peak_exact;
}

std::vector<double> fitted(const Fit& fit, const std::function<bool(const BloomTarget&)>& used,
                           std::vector<double> x, int rounds, double* cost = nullptr) {
  const std::vector<double> mean = fit.start(), sd = fit.prior_sd();
  const auto residuals = [&](const std::vector<double>& y) {
    std::map<std::string, BloomParameters> kinds;
    const auto kind = [&](const std::string& id) -> const BloomParameters& {
      const auto found = kinds.find(id);
      return found != kinds.end() ? found->second
                                  : kinds.emplace(id, fit.kind(y, id)).first->second;
    };
    std::vector<double> r;
    const auto add = [&](const BloomTarget& t) {
      const double error = predicted(kind(t.taxon), t, fit.data.normal[t.season]) - t.observed;
      r.push_back(used(t) ? error / t.sd : 0.0);
    };
    for (const BloomTarget& t : fit.data.targets) {
      if (!t.stored) add(t);
    }
    for (const ForcingTarget& t : fit.data.forcing) {
      if (!t.fitted) continue;
      const double sd_days = std::hypot((t.days_high - t.days_low) / 2, 1.5);
      r.push_back((forced_days(kind(t.taxon), t) - (t.days_low + t.days_high) / 2) / sd_days);
    }
    for (const BloomTarget& t : fit.data.targets) {
      if (t.stored) add(t);
    }
    for (std::size_t i = 0; i < y.size(); ++i) r.push_back((y[i] - mean[i]) / sd[i]);
    return r;
  };
  // Pre-chilled bulbs are few and the main case: their squares count in full.
  const auto stored =
      static_cast<std::size_t>(std::ranges::count_if(fit.data.targets, &BloomTarget::stored));
  std::vector<double> step(x.size());
  for (std::size_t i = 0; i < x.size(); ++i) step[i] = sd[i] * 0.02;
  return minimise(residuals, std::move(x), step, stored + mean.size(), rounds, cost);
}

struct Errors {
  double sum = 0.0, squares = 0.0;
  int n = 0;
  void add(double e) {
    sum += e;
    squares += e * e;
    ++n;
  }
  [[nodiscard]] double rmse() const { return n ? std::sqrt(squares / n) : 0.0; }
  [[nodiscard]] double bias() const { return n ? sum / n : 0.0; }
};

bool is_tulip_peak(const BloomTarget& t) {
  return !t.stored && !t.more && t.taxon == "tulip-triumph" && t.event == Event::peak;
}
bool is_pool(const BloomTarget& t) {
  return !t.stored && !t.more &&
         ((t.label == "tulip-early" && t.event == Event::first) ||
          (t.label == "tulip-any" && t.event == Event::first) ||
          (t.label == "narcissus-mid" && t.event == Event::peak));
}

/// The plain base-0 heat sum of daily means of the air from 1 February (1 August): the day on which
/// it reaches `threshold`.
double day_of_plain_sum(const BloomData& data, const BloomTarget& t, double threshold) {
  const Winter& air = data.air[t.season];
  const Day start = air.latitude < 0 ? Day{2026, 8, 1} : Day{2027, 2, 1};
  double sum = 0.0;
  for (Day d = start; d <= air.last(); ++d) {
    const double heat = std::max(0.0, air.days[static_cast<std::size_t>(d - air.first)].mean_c());
    if (sum + heat >= threshold) return d.serial() + (threshold - sum) / std::max(heat, 1e-9);
    sum += heat;
  }
  return air.last().serial();
}

/// Its days with one threshold per label and event: the best for these very places, or, `left_out`,
/// for all but the place itself (a place alone keeps its own). Added places have the threshold of
/// the others.
std::vector<double> baseline(const BloomData& data, bool left_out) {
  std::map<std::pair<std::string, Event>, std::vector<std::size_t>> groups;
  for (std::size_t i = 0; i < data.targets.size(); ++i) {
    const BloomTarget& t = data.targets[i];
    if (!t.stored && !t.more) groups[{t.label, t.event}].push_back(i);
  }
  std::vector<double> out(data.targets.size(), 0.0);
  for (const auto& [label, members] : groups) {
    std::vector<double> best(members.size(), 1e99);
    double best_of_all = 1e99;
    for (double threshold = 2.0; threshold < 1500.0; threshold += 2.0) {
      std::vector<double> day, squares;
      for (const std::size_t i : members) {
        day.push_back(day_of_plain_sum(data, data.targets[i], threshold));
        squares.push_back(std::pow(day.back() - data.targets[i].plain_mean, 2));
      }
      const double all = std::accumulate(squares.begin(), squares.end(), 0.0);
      for (std::size_t i = 0; i < data.targets.size(); ++i) {
        const BloomTarget& t = data.targets[i];
        if (t.more && std::pair{t.label, t.event} == label && all <= best_of_all) {
          out[i] = day_of_plain_sum(data, t, threshold);
        }
      }
      best_of_all = std::min(best_of_all, all);
      for (std::size_t k = 0; k < members.size(); ++k) {
        const double cost = left_out && members.size() > 1 ? all - squares[k] : all;
        if (cost < best[k]) best[k] = cost, out[members[k]] = day[k];
      }
    }
  }
  return out;
}

void print_table(const BloomData& data, const std::vector<double>& in,
                 const std::vector<double>& out) {
  const std::vector<double> base = baseline(data, false), base_out = baseline(data, true);
  std::map<std::string, std::array<Errors, 4>> rows;
  for (std::size_t i = 0; i < data.targets.size(); ++i) {
    const BloomTarget& t = data.targets[i];
    const std::string name = fmt::format("{}{} {}",
                                         t.stored ? "stored: "
                                         : t.more ? "added: "
                                                  : "",
                                         t.label, t.event == Event::first ? "first" : "peak");
    std::vector<std::string> into{name};
    if (is_tulip_peak(t)) into.push_back("= tulip peaks");
    if (is_pool(t)) into.push_back("= pooled");
    if (is_pool(t) || t.more) into.push_back("= pooled with added daffodils");
    if (!t.stored && !t.more) into.push_back("= all natural");
    for (const std::string& row : into) {
      rows[row][0].add(in[i] - t.plain_mean);
      rows[row][1].add(out[i] - t.plain_mean);
      rows[row][2].add(base[i] - t.plain_mean);
      rows[row][3].add(base_out[i] - t.plain_mean);
    }
  }
  fmt::print(
      "| label and event | places | fitted RMSE | left out RMSE | left out bias | base-0 RMSE | "
      "base-0 left out |\n|---|---|---|---|---|---|---|\n");
  for (const auto& [name, e] : rows) {
    const bool plain = !name.starts_with("stored");
    fmt::print("| {} | {} | {:.1f} | {:.1f} | {:+.1f} | {} | {} |\n", name, e[0].n, e[0].rmse(),
               e[1].rmse(), e[1].bias(), plain ? fmt::format("{:.1f}", e[2].rmse()) : "-",
               plain ? fmt::format("{:.1f}", e[3].rmse()) : "-");
  }
}

/// One dated row with its error where its site was left out.
struct RowError {
  double error = 0.0, half_winters = 0.0, half_width = 0.0;
  bool daffodil_or_tulip = false, stored = false;
};

std::vector<RowError> row_errors(const Fit& fit, const std::vector<double>& x,
                                 const std::vector<double>& out) {
  std::vector<RowError> rows;
  for (std::size_t i = 0; i < out.size(); ++i) {
    const BloomTarget& t = fit.data.targets[i];
    const BloomParameters kind = fit.kind(x, t.taxon);
    const double half = std::abs(predicted(kind, t, fit.data.cold[t.season]) -
                                 predicted(kind, t, fit.data.mild[t.season])) /
                        2;
    const bool main_kind = group_of(fit.catalogue.at(t.taxon)) < 2;
    for (std::size_t j = 0; j < t.rows.size(); ++j) {
      rows.push_back({t.rows[j] - out[i], half, t.half_width[j], main_kind, t.stored});
    }
  }
  return rows;
}

/// winter_share and spread_days of the normal law that makes the rows likeliest: one winter_share,
/// a spread for tulips and daffodils and one for all others.
std::array<double, 3> calibrated(const std::vector<RowError>& rows) {
  std::array<double, 3> best{};
  double best_cost = 1e99;
  for (double share = 0.0; share <= 1.001; share += 0.1) {
    std::array<double, 3> found{share, 0.0, 0.0};
    double cost = 0.0;
    for (int group = 0; group < 2; ++group) {
      double group_cost = 1e99;
      for (double spread = 2.0; spread <= 20.0; spread += 0.25) {
        double c = 0.0;
        for (const RowError& r : rows) {
          if (r.daffodil_or_tulip != (group == 0)) continue;
          const double sd = std::hypot(share * r.half_winters, spread);
          c += std::log(sd) + r.error * r.error / (2 * sd * sd);
        }
        if (c < group_cost) group_cost = c, found[static_cast<std::size_t>(group) + 1] = spread;
      }
      cost += group_cost;
    }
    if (cost < best_cost) best_cost = cost, best = found;
  }
  return best;
}

void print_coverage(const std::vector<RowError>& rows, const std::array<double, 3>& law) {
  fmt::print("winter_share {:.1f}, spread {:.2f} (tulips, daffodils), {:.2f} (others)\n", law[0],
             law[1], law[2]);
  const auto line = [&](const char* name, const auto& member) {
    int n = 0;
    std::array<int, 3> within{};
    double width = 0.0;
    const std::array<double, 3> z{0.6745, 1.2816, 1.9600};
    for (const RowError& r : rows) {
      if (!member(r)) continue;
      ++n;
      const double sd = std::hypot(law[0] * r.half_winters, law[r.daffodil_or_tulip ? 1 : 2]);
      width += 1.2816 * sd;
      for (std::size_t k = 0; k < 3; ++k) within[k] += std::abs(r.error) <= std::round(z[k] * sd);
    }
    fmt::print("| {} | {} | {:.0f} % | {:.0f} % | {:.0f} % | {:.0f} |\n", name, n,
               100.0 * within[0] / n, 100.0 * within[1] / n, 100.0 * within[2] / n, width / n);
  };
  fmt::print(
      "| dates | n | in 50 % range | in 80 % range | in 95 % range | 80 %: +- days "
      "|\n|---|---|---|---|---|---|\n");
  line("all", [](const RowError&) { return true; });
  line("tulips and daffodils, natural winter",
       [](const RowError& r) { return r.daffodil_or_tulip && !r.stored; });
  line("pre-chilled tulips", [](const RowError& r) { return r.stored; });
  line("other kinds", [](const RowError& r) { return !r.daffodil_or_tulip; });
}

double rounded(double value, int digits) {
  const double unit = std::pow(10.0, std::floor(std::log10(std::abs(value))) - digits + 1);
  return value == 0.0 ? 0.0 : std::round(value / unit) * unit;
}

void write_table(const Fit& fit, const std::vector<double>& x, const std::array<double, 3>& law,
                 const std::string& path) {
  const char* const dates = "published bloom dates and forcing tables of docs/bloom.md";
  std::string text = "taxon,quantity,value,unit,origin,source\n";
  const auto row = [&](std::string_view taxon, std::string_view quantity, double value, int digits,
                       std::string_view unit, std::string_view origin, std::string_view source) {
    text += fmt::format("{},{},{:g},{},{},{}\n", taxon, quantity, rounded(value, digits), unit,
                        origin, source);
  };
  const std::map<std::string, std::string> units{
      {"fold_weeks", "weeks"}, {"unchilled_rate", "share"}, {"storage_credit", "ratio"},
      {"half_light_h", "h"},   {"light_width_h", "h"},      {"storage_relief", "share"}};
  const BloomParameters any = fit.kind(x, "tulip-triumph");
  for (const Shared& s : shared)
    row("*", s.name, any.*s.member, 3, units.at(s.name), "fitted", dates);
  row("*", "winter_share", law[0], 2, "share", "calibrated", "errors at places left out");
  row("*", "spread_days", law[2], 2, "days", "calibrated", "errors at places left out");
  row("*", "dark_rate", std::clamp(x[shared.size() + 2], 0.02, 1.0), 2, "share", "fitted", dates);
  row("*", "peak_share", 0.4, 2, "share", "from memory", "");
  row("*", "warmth_per_k", 0.04, 2, "1/K", "from memory", "");
  row("*", "shoots_share", 0.3, 2, "share", "from memory", "");
  for (int c = 1; c < classes; ++c) {
    const auto i = static_cast<std::size_t>(c - 1);
    row(fmt::format("class-{}", c), "heat_sum",
        class_mean[i] * std::exp(x[shared.size() + dark_mean.size() + i]), 3, "degC d", "fitted",
        "season class: what its kinds have in common");
    // The small early kinds flower almost as they come up.
    if (c <= 3)
      row(fmt::format("class-{}", c), "shoots_share", 0.75, 2, "share", "from memory", "");
  }
  for (const Taxon& taxon : fit.catalogue.taxa()) {
    const BloomParameters kind = fit.kind(x, taxon.id);
    const bool dated = std::ranges::find(fit.seen, taxon.id) != fit.seen.end();
    row(taxon.id, "heat_sum", kind.heat_sum, 3, "degC d",
        dated               ? "fitted"
        : by_forcing(taxon) ? "derived"
                            : "pooled",
        dated               ? dates
        : by_forcing(taxon) ? "weeks_to_flower_forcing of the catalogue at 16 degC"
                            : "its season class");
    row(taxon.id, "dark_rate", kind.dark_rate, 2, "share",
        tender(taxon) ? "common practice" : "fitted",
        tender(taxon) ? "grows in winter light" : dates);
    if (group_of(taxon) < 2) {
      row(taxon.id, "spread_days", law[1], 2, "days", "calibrated", "errors at places left out");
    }
  }
  std::ofstream{path} << text;
}

}  // namespace
}  // namespace bulbwright::fit

int main(int argc, char** argv) {
  using namespace bulbwright;
  using namespace bulbwright::fit;
  const auto slurp = [](const std::string& path) {
    std::ifstream in{path};
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
  };
  const auto has = [&](const char* flag) {
    return std::any_of(argv + 1, argv + argc, [&](const char* a) { return !std::strcmp(a, flag); });
  };
  Fit fit;
  fit.data =
      read_bloom_data(slurp(bulbwright::fixture::source_path("tests/vectors/bloom_dates.csv")),
                      slurp(bulbwright::fixture::source_path("tests/vectors/bloom_forcing.csv")));
  std::erase_if(fit.data.targets, [](const BloomTarget& t) { return t.check; });
  std::set<std::string> seen;
  for (const BloomTarget& t : fit.data.targets) seen.insert(t.taxon);
  fit.seen.assign(seen.begin(), seen.end());

  double cost = 0.0;
  const std::vector<double> x = fitted(
      fit, [](const BloomTarget&) { return true; }, fit.start(), 60, &cost);
  fmt::print("cost {:.2f}\n", cost);
  for (std::size_t i = 0; i < shared.size(); ++i) fmt::print("{} {:.3f}\n", shared[i].name, x[i]);
  for (std::size_t i = 0; i < 3; ++i)
    fmt::print("dark {} {:.3f}\n", group_names[i], x[shared.size() + i]);
  std::vector<double> in, out;
  for (const BloomTarget& t : fit.data.targets) {
    in.push_back(predicted(fit.kind(x, t.taxon), t, fit.data.normal[t.season]));
  }
  out = in;
  if (!has("--quick")) {
    std::set<std::string> sites;
    for (const BloomTarget& t : fit.data.targets) sites.insert(t.site);
    for (const std::string& site : sites) {
      const std::vector<double> y = fitted(
          fit, [&](const BloomTarget& t) { return t.site != site; }, x, 8);
      for (std::size_t i = 0; i < out.size(); ++i) {
        const BloomTarget& t = fit.data.targets[i];
        if (t.site == site) out[i] = predicted(fit.kind(y, t.taxon), t, fit.data.normal[t.season]);
      }
    }
  }
  print_table(fit.data, in, out);
  for (std::size_t i = 0; i < out.size(); ++i) {
    const BloomTarget& t = fit.data.targets[i];
    if (t.stored || has("--all")) {
      fmt::print("{:30} {:16} {} obs {} fit {:+.1f} out {:+.1f}\n", t.site, t.label,
                 t.event == Event::first ? "first" : "peak ",
                 to_iso(Day{} + static_cast<int>(t.plain_mean)), in[i] - t.plain_mean,
                 out[i] - t.plain_mean);
    }
  }
  const std::vector<RowError> rows = row_errors(fit, x, out);
  const std::array<double, 3> law = calibrated(rows);
  print_coverage(rows, law);
  for (const ForcingTarget& t : fit.data.forcing) {
    fmt::print(
        "{:24} {:4.1f} weeks at {:.1f} then {:.0f} degC: {:.1f} days, published {:.0f} to {:.0f} "
        "{}\n",
        t.taxon, t.cold_weeks, t.cold_c, t.then_c, forced_days(fit.kind(x, t.taxon), t), t.days_low,
        t.days_high, t.fitted ? "" : "(check)");
  }
  for (int i = 1; i + 1 < argc; ++i) {
    if (!std::strcmp(argv[i], "--write")) write_table(fit, x, law, argv[i + 1]);
  }
}
