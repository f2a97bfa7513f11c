// Fits data/bloom.csv to what gardens, refrigerated bulbs, forcing tables and practice say, and
// prints how well it does at places left out.
//   bloom_fit                      fit, figures with each place left out, ranges
//   bloom_fit --write FILE         and write the table
//   bloom_fit --quick              without leaving places out
//   bloom_fit --order              and all kinds by first flower at eight places
// Method: docs/bloom_model.md.
#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <cstring>
#include <fstream>
#include <map>
#include <random>
#include <set>
#include <tuple>

#include <fmt/core.h>

#include "climate/day_length.hpp"
#include "figures.hpp"
#include "practice.hpp"

namespace bulbwright::fit {
namespace {

constexpr int classes = 8;
constexpr int starts = 9;  // 39 more found nothing deeper

/// A figure that is fitted: prior mean and deviation, and the kinds that share it.
struct Shared {
  const char* name;
  double BloomParameters::*member;
  const char* group;  ///< "*", or as light_group()
  double mean, sd, least, most;
};
using P = BloomParameters;
std::vector<Shared> shared{
    Shared{"fold_weeks", &P::fold_weeks, "*", 3.0, 0.7, 0.5, 8.0},
    Shared{"unchilled_rate", &P::unchilled_rate, "tulips", 0.20, 0.06, 0.03, 0.9},
    Shared{"unchilled_rate", &P::unchilled_rate, "all daffodils", 0.25, 0.10, 0.03, 0.9},
    Shared{"unchilled_rate", &P::unchilled_rate, "others", 0.25, 0.10, 0.03, 0.9},
    Shared{"storage_credit", &P::storage_credit, "*", 0.7, 0.25, 0.3, 2.5},
    Shared{"half_light_h", &P::half_light_h, "*", 11.5, 0.5, 9.0, 13.0},
    Shared{"light_width_h", &P::light_width_h, "*", 0.6, 0.2, 0.2, 2.0},
    Shared{"storage_relief", &P::storage_relief, "tulips", 0.6, 0.2, 0.0, 1.0},
    Shared{"storage_relief", &P::storage_relief, "all daffodils", 0.2, 0.1, 0.0, 1.0},
    Shared{"storage_relief", &P::storage_relief, "others", 0.3, 0.15, 0.0, 1.0},
    Shared{"relief_weeks", &P::relief_weeks, "*", 12.0, 2.0, 2.0, 30.0},
    Shared{"rooting_heat", &P::rooting_heat, "*", 140.0, 6.0, 0.0, 500.0},
    // Growth of tulips and daffodils ends at 2 to 5 degC (from memory); published -5 days/K.
    Shared{"base_c", &P::base_c, "tulips", 1.2, 0.15, -3.0, 6.0},
    Shared{"base_c", &P::base_c, "all daffodils", 1.2, 0.12, -3.0, 6.0},
    Shared{"base_c", &P::base_c, "others", -1.0, 0.3, -3.0, 6.0},
    Shared{"base_c", &P::base_c, "tender", 2.0, 1.0, -3.0, 6.0},
    Shared{"dark_rate", &P::dark_rate, "tulips", 0.10, 0.05, 0.01, 1.0},
    Shared{"dark_rate", &P::dark_rate, "daffodils", 0.10, 0.03, 0.01, 1.0},
    Shared{"dark_rate", &P::dark_rate, "early daffodils", 0.10, 0.05, 0.01, 1.0},
    Shared{"dark_rate", &P::dark_rate, "paperwhites", 0.75, 0.1, 0.01, 1.0},
    Shared{"dark_rate", &P::dark_rate, "early", 0.20, 0.07, 0.01, 1.0},
    Shared{"dark_rate", &P::dark_rate, "late", 0.10, 0.05, 0.01, 1.0},
    Shared{"base_c", &P::base_c, "early daffodils", -0.7, 0.3, -3.0, 6.0},
    // The last word on a kind: these stand in two groups.
    Shared{"base_c", &P::base_c, "mild", 3.0, 1.5, -3.0, 6.0},
    Shared{"base_c", &P::base_c, "Dutch iris", 2.5, 0.7, -3.0, 8.0},
    Shared{"dark_rate", &P::dark_rate, "mild", 0.4, 0.2, 0.01, 1.0},
};

/// Prior heat sums to first flowers by season class; class 8 and tender kinds by forcing weeks.
const std::array<double, classes> class_mean{80, 100, 125, 190, 250, 320, 400, 0};
constexpr double class_sd = 0.25;    // of the logarithm
constexpr double taxon_sd = 0.40;    // a kind about its class
constexpr double forced_c = 16.0;    // "about 15 to 18"
constexpr double full_weeks = 12.0;  // outdoor weeks of the kinds that want most

bool tender(const std::string& taxon) {
  return std::string{"tender kinds"} == group_name(taxon);
}
/// Of mild winters, in leaf all winter: their place among the others differs by climate.
bool mild(const std::string& id) {
  return id == "narcissus-tazetta" || id == "narcissus-jonquilla" || id == "leucojum-aestivum" ||
         id == "ipheion" || id == "iris-hollandica";
}
std::string light_group(const Taxon& taxon) {
  if (taxon.id == "narcissus-tazetta-tender") return "paperwhites";
  if (tender(taxon.id)) return "tender";
  if (taxon.genus == "Tulipa") return "tulips";
  if (taxon.genus == "Narcissus") return taxon.season_class <= 4 ? "early daffodils" : "daffodils";
  return taxon.season_class <= 3 ? "early" : "late";
}
bool in_group(const Taxon& taxon, const std::string& group) {
  const std::string own = light_group(taxon);
  if (group == "mild") return mild(taxon.id);
  if (group == "Dutch iris") return taxon.id == "iris-hollandica";
  return group == "*" || group == own || (group == "all daffodils" && taxon.genus == "Narcissus") ||
         (group == "others" && own != "tender" && taxon.genus != "Tulipa" &&
          taxon.genus != "Narcissus");
}
bool wants_cold(const Taxon& taxon) {
  return taxon.outdoor_cold_weeks.low > 0.0;
}
bool by_forcing(const Taxon& taxon) {
  return taxon.season_class == classes || tender(taxon.id);
}

/// Its rows in data/bloom.csv were set down by hand: no part of the fit, and kept by it.
bool by_hand(const BloomTable& table, const std::string& id) {
  return std::any_of(table.facts().begin(), table.facts().end(), [&](const BloomFact& fact) {
    return fact.taxon == id && fact.quantity == "heat_sum" && fact.origin == "from memory";
  });
}
Catalogue fitted_kinds(const BloomTable& table) {
  const Catalogue all = builtin_catalogue();
  std::vector<Taxon> kinds;
  for (const Taxon& taxon : all.taxa()) {
    if (!by_hand(table, taxon.id)) kinds.push_back(taxon);
  }
  return {std::move(kinds), all.genera()};
}

struct Fit {
  BloomTable table = BloomTable::builtin();
  Catalogue catalogue = fitted_kinds(table);
  Evidence evidence;
  std::vector<std::string> gardens;
  std::vector<double> garden_sd;
  std::vector<std::size_t> garden_of;  ///< by row; gardens.size() for none

  [[nodiscard]] std::size_t kinds() const { return catalogue.taxa().size(); }
  [[nodiscard]] std::size_t class_at() const { return shared.size(); }
  [[nodiscard]] std::size_t kind_at() const { return class_at() + classes; }
  [[nodiscard]] std::size_t garden_at() const { return kind_at() + kinds(); }
  [[nodiscard]] std::size_t size() const { return garden_at() + gardens.size(); }
  [[nodiscard]] std::size_t index_of(const std::string& id) const {
    for (std::size_t i = 0; i < kinds(); ++i) {
      if (catalogue.taxa()[i].id == id) return i;
    }
    throw std::runtime_error{"no taxon " + id};
  }

  void prepare() {
    std::map<std::string, std::size_t> known;
    for (const Observation& row : evidence.rows) {
      if (row.garden.empty()) {
        garden_of.push_back(static_cast<std::size_t>(-1));
        continue;
      }
      const auto [at, fresh] = known.emplace(row.garden, gardens.size());
      if (fresh) {
        gardens.push_back(row.garden);
        garden_sd.push_back(row.garden_sd);
      }
      garden_of.push_back(at->second);
    }
  }
  [[nodiscard]] std::vector<double> start() const {
    std::vector<double> x;
    for (const Shared& s : shared) x.push_back(s.mean);
    x.resize(size(), 0.0);
    return x;
  }
  [[nodiscard]] std::vector<double> prior_sd() const {
    std::vector<double> sd;
    for (const Shared& s : shared) sd.push_back(s.sd);
    sd.insert(sd.end(), classes, class_sd);
    for (const Taxon& taxon : catalogue.taxa())
      sd.push_back(tender(taxon.id) ? 0.35 : by_forcing(taxon) ? 0.6 : taxon_sd);
    sd.insert(sd.end(), garden_sd.begin(), garden_sd.end());
    return sd;
  }
  [[nodiscard]] BloomParameters kind(const std::vector<double>& x, const std::string& id) const {
    const std::size_t at = index_of(id);
    const Taxon& taxon = catalogue.taxa()[at];
    BloomParameters p = table.of(taxon);
    p.depth_share = 0.008;
    p.least_days = taxon.genus == "Tulipa" || taxon.genus == "Narcissus" ? 20.0 : 14.0;
    p.cold_scale =
        wants_cold(taxon) ? std::clamp(taxon.outdoor_cold_weeks.value / full_weeks, 0.2, 1.0) : 0.0;
    p.dark_rate = 1.0;
    for (std::size_t i = 0; i < shared.size(); ++i) {
      const Shared& s = shared[i];
      if (in_group(taxon, s.group)) p.*s.member = std::clamp(x[i], s.least, s.most);
    }
    double log_sum = x[kind_at() + at];
    if (by_forcing(taxon)) {
      const double light =
          p.dark_rate +
          (1 - p.dark_rate) / (1 + std::exp(-(12.5 - p.half_light_h) / p.light_width_h));
      log_sum += std::log(taxon.weeks_to_flower_forcing.value * 7 * (forced_c - p.base_c) * light);
    } else {
      const auto c = static_cast<std::size_t>(std::clamp(taxon.season_class, 1, classes) - 1);
      log_sum += std::log(class_mean[c]) + x[class_at() + c];
    }
    p.heat_sum = std::exp(log_sum);
    return p;
  }
  [[nodiscard]] std::vector<BloomParameters> all(const std::vector<double>& x) const {
    std::vector<BloomParameters> found;
    for (const Taxon& taxon : catalogue.taxa()) found.push_back(kind(x, taxon.id));
    return found;
  }
};

/// What a set of figures predicts.
struct State {
  std::vector<BloomParameters> kinds;
  std::vector<Wave> waves;     ///< by case
  std::vector<double> errors;  ///< by row, then forcing table, days
};

/// Whether two sets of figures of one kind predict the same.
bool same(const BloomParameters& a, const BloomParameters& b) {
  return a.heat_sum == b.heat_sum &&
         std::ranges::all_of(shared, [&](const Shared& s) { return a.*s.member == b.*s.member; });
}

/// The rows' errors without their gardens' offsets, then the forcing tables', in days. Rows of one
/// kind, place and planting share their wave: a case.
class Errors {
 public:
  explicit Errors(const Fit& fit) : fit_{&fit} {
    for (const Observation& row : fit.evidence.rows) {
      const std::size_t kind = fit.index_of(row.taxon);
      first_.push_back(case_of(kind, row, row.planting));
      other_.push_back(row.before          ? case_of(kind, row, *row.before)
                       : row.other.empty() ? first_.back()
                                           : case_of(fit.index_of(row.other), row, row.planting));
    }
    for (const ForcingTarget& t : fit.evidence.forcing) forced_.push_back(fit.index_of(t.taxon));
  }
  [[nodiscard]] std::size_t size() const { return first_.size() + forced_.size(); }

  /// Only what differs from `known` is worked out again.
  [[nodiscard]] State at(const std::vector<double>& x, const State* known = nullptr) const {
    State state;
    if (known != nullptr) state = *known;
    state.kinds = fit_->all(x);
    std::vector<bool> changed(state.kinds.size(), true);
    for (std::size_t k = 0; known != nullptr && k < changed.size(); ++k) {
      changed[k] = !same(state.kinds[k], known->kinds[k]);
    }
    state.waves.resize(cases_.size());
    state.errors.resize(size());
    for (std::size_t c = 0; c < cases_.size(); ++c) {
      if (!changed[cases_[c].kind]) continue;
      state.waves[c] =
          predict_wave(state.kinds[cases_[c].kind], season(cases_[c].row), cases_[c].planting);
    }
    for (std::size_t i = 0; i < first_.size(); ++i) {
      if (!changed[cases_[first_[i]].kind] && !changed[cases_[other_[i]].kind]) continue;
      state.errors[i] =
          miss(fit_->evidence.rows[i], state.waves[first_[i]], state.waves[other_[i]], season(i));
    }
    for (std::size_t i = 0; i < forced_.size(); ++i) {
      if (!changed[forced_[i]]) continue;
      const ForcingTarget& t = fit_->evidence.forcing[i];
      state.errors[first_.size() + i] =
          forced_days(state.kinds[forced_[i]], t) - (t.days_low + t.days_high) / 2;
    }
    return state;
  }
  [[nodiscard]] double sd(std::size_t row) const {
    if (row < first_.size()) return fit_->evidence.rows[row].sd;
    const ForcingTarget& t = fit_->evidence.forcing[row - first_.size()];
    return std::hypot((t.days_high - t.days_low) / 2, 2.0);
  }
  [[nodiscard]] bool fitted(std::size_t row) const {
    if (row < first_.size()) return !fit_->evidence.rows[row].check;
    return fit_->evidence.forcing[row - first_.size()].fitted;
  }
  /// A garden's offset moves dates, and open days that are missed.
  [[nodiscard]] double with_offset(std::size_t row, double error, const std::vector<double>& x,
                                   double* slope) const {
    *slope = 0.0;
    if (row >= first_.size()) return error;
    const std::size_t garden = fit_->garden_of[row];
    if (garden == static_cast<std::size_t>(-1)) return error;
    const double offset = x[fit_->garden_at() + garden];
    if (fit_->evidence.rows[row].says == Says::date) {
      *slope = 1.0;
      return error + offset;
    }
    return error;
  }

 private:
  struct Case {
    std::size_t kind, row;  ///< the first row that has it
    BloomPlanting planting;
  };
  [[nodiscard]] const BloomSeason& season(std::size_t row) const {
    return fit_->evidence.grounds[fit_->evidence.rows[row].ground].normal;
  }
  std::size_t case_of(std::size_t kind, const Observation& row, const BloomPlanting& p) {
    const std::size_t next = cases_.size();
    const auto [at, fresh] =
        known_.emplace(std::tuple{kind, row.ground, p.planted.serial(), p.stored.value(),
                                  p.deeper_cm, static_cast<int>(p.state)},
                       next);
    if (fresh)
      cases_.push_back({kind, static_cast<std::size_t>(&row - fit_->evidence.rows.data()), p});
    return at->second;
  }

  const Fit* fit_;
  std::vector<Case> cases_;
  std::map<std::tuple<std::size_t, std::size_t, int, double, double, int>, std::size_t> known_;
  std::vector<std::size_t> first_, other_, forced_;
};

/// Levenberg's steps with reweighting for sum 2 (sqrt(1 + r^2) - 1); squares for the priors.
class Minimiser {
 public:
  explicit Minimiser(const Fit& fit)
      : fit_{&fit}, errors_{fit}, mean_{fit.start()}, sd_{fit.prior_sd()} {}

  std::vector<double> minimise(std::vector<double> x, int rounds, double* cost_found) {
    const std::vector<bool> used = all_used();
    double damping = 1e-3;
    State e = errors_.at(x);
    double cost = cost_of(x, e.errors, used);
    for (int round = 0; round < rounds; ++round) {
      slopes(x, e);
      bool better = false, tiny = false;
      for (int attempt = 0; attempt < 14 && !better; ++attempt) {
        const std::vector<double> y = step(x, e.errors, used, damping);
        State ey = errors_.at(y);
        const double cy = cost_of(y, ey.errors, used);
        if (cy < cost) {
          better = true;
          tiny = cost - cy < 2e-6 * cost;
          x = y;
          e = std::move(ey);
          cost = cy;
          damping = std::max(damping / 5, 1e-8);
        } else {
          damping *= 6;
        }
      }
      if (!better || tiny) break;
    }
    if (cost_found != nullptr) *cost_found = cost;
    slopes(x, e);
    base_ = std::move(e);
    return x;
  }

  /// Where the slopes mislead (flowers that miss the season, days in steps): single figures, tried
  /// to both sides.
  std::vector<double> polish(std::vector<double> x) const {
    const std::vector<bool> used = all_used();
    State e = errors_.at(x);
    double cost = cost_of(x, e.errors, used);
    for (std::size_t j = 0; j < fit_->garden_at(); ++j) {
      for (const double by : {0.6, -0.6, 0.2, -0.2, 0.06, -0.06}) {
        std::vector<double> y = x;
        y[j] += by * sd_[j];
        if (j < shared.size()) y[j] = std::clamp(y[j], shared[j].least, shared[j].most);
        State ey = errors_.at(y, &e);
        const double cy = cost_of(y, ey.errors, used);
        if (cy < cost) {
          x = y;
          e = std::move(ey);
          cost = cy;
        }
      }
    }
    return x;
  }

  /// From the minimum, with the slopes found there: the fit without the rows of one place.
  std::vector<double> without(std::vector<double> x, const std::string& place) {
    std::vector<bool> used = all_used();
    for (std::size_t i = 0; i < fit_->evidence.rows.size(); ++i) {
      if (fit_->evidence.rows[i].place == place) used[i] = false;
    }
    State e = base_;
    double cost = cost_of(x, e.errors, used);
    bool better = true;
    for (int round = 0; round < 3 && better; ++round) {
      better = false;
      // Where the slopes reach too far, shorter steps: a place must not stay in for want of one.
      for (const double damping : {1e-4, 0.1, 1.0}) {
        const std::vector<double> y = step(x, e.errors, used, damping);
        State ey = errors_.at(y);
        const double cy = cost_of(y, ey.errors, used);
        if (cy >= cost) continue;
        better = cost - cy > 0.05;
        x = y;
        e = std::move(ey);
        cost = cy;
        break;
      }
    }
    return x;
  }

 private:
  [[nodiscard]] std::vector<bool> all_used() const {
    std::vector<bool> used(errors_.size());
    for (std::size_t i = 0; i < used.size(); ++i) used[i] = errors_.fitted(i);
    return used;
  }
  [[nodiscard]] double cost_of(const std::vector<double>& x, const std::vector<double>& e,
                               const std::vector<bool>& used) const {
    double cost = 0.0;
    for (std::size_t i = 0; i < e.size(); ++i) {
      if (!used[i]) continue;
      double slope = 0.0;
      const double r = errors_.with_offset(i, e[i], x, &slope) / errors_.sd(i);
      cost += 2 * (std::sqrt(1 + r * r) - 1);
    }
    for (std::size_t j = 0; j < x.size(); ++j) {
      const double r = (x[j] - mean_[j]) / sd_[j];
      cost += r * r;
    }
    return cost;
  }
  void slopes(const std::vector<double>& x, const State& e) {
    const std::size_t n = fit_->garden_at();
    slopes_.assign(errors_.size(), std::vector<double>(n, 0.0));
    for (std::size_t j = 0; j < n; ++j) {
      std::vector<double> y = x;
      const double by = sd_[j] * 0.02;
      y[j] += by;
      const State moved = errors_.at(y, &e);
      for (std::size_t i = 0; i < errors_.size(); ++i) {
        slopes_[i][j] = (moved.errors[i] - e.errors[i]) / by;
      }
    }
  }
  [[nodiscard]] std::vector<double> step(const std::vector<double>& x, const std::vector<double>& e,
                                         const std::vector<bool>& used, double damping) const {
    const std::size_t n = fit_->garden_at(), gardens = fit_->gardens.size();
    std::vector<double> a(n * n), g(n);
    // A garden's offset meets the figures alone, so it is eliminated first.
    std::vector<double> own(gardens), own_g(gardens), cross(gardens * n);
    std::vector<std::pair<std::size_t, double>> row;
    for (std::size_t i = 0; i < e.size(); ++i) {
      if (!used[i]) continue;
      double slope = 0.0;
      const double sd = errors_.sd(i);
      const double r = errors_.with_offset(i, e[i], x, &slope) / sd;
      const double w = 1 / std::sqrt(1 + r * r);
      row.clear();
      for (std::size_t j = 0; j < n; ++j) {
        if (slopes_[i][j] != 0.0) row.emplace_back(j, slopes_[i][j] / sd);
      }
      for (const auto& [j, dj] : row) {
        g[j] += w * dj * r;
        for (const auto& [k, dk] : row) {
          if (k <= j) a[j * n + k] += w * dj * dk;
        }
      }
      if (slope == 0.0) continue;
      const std::size_t garden = fit_->garden_of[i];
      const double d = slope / sd;
      own[garden] += w * d * d;
      own_g[garden] += w * d * r;
      for (const auto& [j, dj] : row) cross[garden * n + j] += w * d * dj;
    }
    const auto prior = [&](std::size_t j, double* diagonal, double* gradient) {
      *diagonal = (*diagonal + 1 / (sd_[j] * sd_[j])) * (1 + damping);
      *gradient += (x[j] - mean_[j]) / (sd_[j] * sd_[j]);
    };
    for (std::size_t j = 0; j < n; ++j) prior(j, &a[j * n + j], &g[j]);
    for (std::size_t q = 0; q < gardens; ++q) {
      prior(n + q, &own[q], &own_g[q]);
      for (std::size_t j = 0; j < n; ++j) {
        const double share = cross[q * n + j] / own[q];
        if (share == 0.0) continue;
        g[j] -= share * own_g[q];
        for (std::size_t k = 0; k <= j; ++k) a[j * n + k] -= share * cross[q * n + k];
      }
    }
    for (std::size_t j = 0; j < n; ++j) {  // Cholesky, then the two triangular solves
      for (std::size_t k = 0; k <= j; ++k) {
        double sum = a[j * n + k];
        for (std::size_t l = 0; l < k; ++l) sum -= a[j * n + l] * a[k * n + l];
        a[j * n + k] = j == k ? std::sqrt(std::max(sum, 1e-12)) : sum / a[k * n + k];
      }
    }
    for (std::size_t j = 0; j < n; ++j) {
      for (std::size_t k = 0; k < j; ++k) g[j] -= a[j * n + k] * g[k];
      g[j] /= a[j * n + j];
    }
    for (std::size_t j = n; j-- > 0;) {
      for (std::size_t k = j + 1; k < n; ++k) g[j] -= a[k * n + j] * g[k];
      g[j] /= a[j * n + j];
    }
    std::vector<double> y = x;
    for (std::size_t j = 0; j < n; ++j) y[j] -= g[j];
    for (std::size_t q = 0; q < gardens; ++q) {
      double move = own_g[q];
      for (std::size_t j = 0; j < n; ++j) move -= cross[q * n + j] * g[j];
      y[n + q] -= move / own[q];
    }
    for (std::size_t j = 0; j < shared.size(); ++j) {
      y[j] = std::clamp(y[j], shared[j].least, shared[j].most);
    }
    return y;
  }

  const Fit* fit_;
  Errors errors_;
  std::vector<double> mean_, sd_;
  std::vector<std::vector<double>> slopes_;
  State base_;  ///< at the minimum
};

double rounded(double value, int digits) {
  if (value == 0.0) return 0.0;
  const double unit = std::pow(10.0, std::floor(std::log10(std::abs(value))) - digits + 1);
  return std::round(value / unit) * unit;
}

void write_table(const Fit& fit, const std::vector<double>& x, const SpreadLaw& law,
                 const std::string& path) {
  const char* const dates =
      "published bloom dates and calendars of gardens; forcing tables (docs/bloom_model.md)";
  std::string text = "taxon,quantity,value,unit,origin,source\n";
  const auto row = [&](std::string_view taxon, std::string_view quantity, double value, int digits,
                       std::string_view unit, std::string_view origin, std::string_view source) {
    text += fmt::format("{},{},{:g},{},{},{}\n", taxon, quantity, rounded(value, digits), unit,
                        origin, source);
  };
  const std::map<std::string, std::string> units{
      {"fold_weeks", "weeks"},   {"unchilled_rate", "share"}, {"storage_credit", "ratio"},
      {"half_light_h", "h"},     {"light_width_h", "h"},      {"storage_relief", "share"},
      {"relief_weeks", "weeks"}, {"rooting_heat", "degC d"},  {"base_c", "degC"},
      {"dark_rate", "share"}};
  for (std::size_t i = 0; i < shared.size(); ++i) {
    const Shared& s = shared[i];
    if (std::string{"*"} == s.group) row("*", s.name, x[i], 4, units.at(s.name), "fitted", dates);
    if (std::string{"others"} == s.group || std::string{"late"} == s.group)
      row("*", s.name, x[i], 4, units.at(s.name), "fitted", dates);
  }
  row("*", "winter_share", law.winter_share, 2, "share", "calibrated", "errors at places left out");
  row("*", "spread_days", law.spread[2], 2, "days", "calibrated", "errors at places left out");
  row("*", "stored_spread_days", law.stored, 2, "days", "calibrated",
      "errors of refrigerated bulbs at places left out");
  row("*", "least_days", 14, 2, "days", "common practice", "forcing tables: two weeks and more");
  row("*", "depth_share", 0.008, 2, "1/cm", "from memory",
      "about half a day a centimetre; trials give the direction alone");
  row("*", "blast_c", 24, 2, "degC", "from memory",
      "that heat blasts late flowers is published (Flower Blasting; Horticulture magazine)");
  row("*", "peak_share", 0.4, 2, "share", "from memory", "waves rise faster than they fade");
  row("*", "warmth_per_k", 0.04, 2, "1/K", "from memory", "cool springs make flowers last");
  row("*", "shoots_share", 0.3, 2, "share", "from memory", "leaves lead flowers by weeks");
  for (int c = 1; c < classes; ++c) {
    const auto i = static_cast<std::size_t>(c - 1);
    row(fmt::format("class-{}", c), "heat_sum", class_mean[i] * std::exp(x[fit.class_at() + i]), 3,
        "degC d", "fitted", "season class: what its kinds have in common");
    // The small early kinds flower almost as they come up.
    if (c <= 3)
      row(fmt::format("class-{}", c), "shoots_share", 0.75, 2, "share", "from memory", "");
  }
  std::set<std::string> dated;
  for (const Observation& o : fit.evidence.rows) {
    if (o.place != "practice" && o.says != Says::period && !o.check) dated.insert(o.taxon);
  }
  for (const Taxon& taxon : fit.catalogue.taxa()) {
    const BloomParameters kind = fit.kind(x, taxon.id);
    const bool seen = dated.contains(taxon.id);
    row(taxon.id, "heat_sum", kind.heat_sum, 4, "degC d",
        seen                ? "fitted"
        : by_forcing(taxon) ? "derived"
                            : "pooled",
        seen                ? dates
        : by_forcing(taxon) ? "weeks_to_flower_forcing of the catalogue at 16 degC"
                            : "its season class and the order and months of growers");
    row(taxon.id, "base_c", kind.base_c, 3, "degC", "fitted", dates);
    row(taxon.id, "cold_scale", kind.cold_scale, 3, "share", "derived",
        wants_cold(taxon) ? "outdoor_cold_weeks of the catalogue / 12" : "wants no cold outdoors");
    row(taxon.id, "unchilled_rate", kind.unchilled_rate, 3, "share", "fitted", dates);
    if (taxon.genus == "Tulipa" || taxon.genus == "Narcissus")
      row(taxon.id, "storage_relief", kind.storage_relief, 3, "share", "fitted", dates);
    row(taxon.id, "dark_rate", kind.dark_rate, 3, "share",
        light_group(taxon) == "tender" ? "common practice" : "fitted",
        light_group(taxon) == "tender" ? "grows in winter light" : dates);
    if (kind.least_days != 14.0)
      row(taxon.id, "least_days", kind.least_days, 2, "days", "common practice",
          "three weeks in the greenhouse");
    const std::string group = group_name(taxon.id);
    if (group != "small kinds")
      row(taxon.id, "spread_days",
          law.spread[group == "tulips"      ? 0
                     : group == "daffodils" ? 1
                                            : 3],
          2, "days", "calibrated", "errors at places left out");
  }
  for (const BloomFact& fact : fit.table.facts()) {
    if (!by_hand(fit.table, fact.taxon)) continue;
    text += fmt::format("{},{},{:g},{},{},{}\n", fact.taxon, fact.quantity, fact.value, fact.unit,
                        fact.origin, fact.source);
  }
  std::ofstream{path} << text;
}

}  // namespace
}  // namespace bulbwright::fit

int main(int argc, char** argv) {
  using namespace bulbwright;
  using namespace bulbwright::fit;
  const auto has = [&](const char* flag) {
    return std::any_of(argv + 1, argv + argc, [&](const char* a) { return !std::strcmp(a, flag); });
  };
  for (int i = 1; i + 1 < argc; ++i) {  // --prior base_c:tulips=3,0.5
    if (std::strcmp(argv[i], "--prior")) continue;
    char name[64], group[64];
    double mean = 0.0, sd = 0.0;
    if (std::sscanf(argv[i + 1], "%63[^:]:%63[^=]=%lf,%lf", name, group, &mean, &sd) != 4) return 2;
    for (Shared& s : shared) {
      if (!std::strcmp(s.name, name) && !std::strcmp(s.group, group)) {
        s.mean = mean;
        s.sd = sd;
      }
    }
  }
  Fit fit;
  fit.evidence = read_evidence();
  add_practice(fit.evidence, fit.catalogue);
  fit.prepare();
  Minimiser minimiser{fit};
  std::vector<double> x = fit.start();
  double cost = 0.0;
  const auto settled = [&](std::vector<double> from) {
    for (int turn = 0; turn < 3; ++turn)
      from = minimiser.polish(minimiser.minimise(std::move(from), 60, nullptr));
    return minimiser.minimise(std::move(from), 60, &cost);
  };
  x = settled(x);
  fmt::print("cost {:.2f}\n", cost);
  // The cost has many hollows of nearly one depth: the deepest of a few starts about the best.
  std::mt19937 random{1};
  double least = cost;
  const std::vector<double> sd = fit.prior_sd();
  for (int start = 0; start < starts; ++start) {
    std::vector<double> y = x;
    for (std::size_t j = 0; j < fit.garden_at(); ++j) {
      const double u = static_cast<double>(random()) / 4294967296.0;
      y[j] += (2 * u - 1) * sd[j];
      if (j < shared.size()) y[j] = std::clamp(y[j], shared[j].least, shared[j].most);
    }
    y = settled(y);
    fmt::print("  start {}: {:.2f}\n", start, cost);
    if (cost < least) {
      least = cost;
      x = y;
    }
  }
  x = minimiser.minimise(x, 60, &cost);
  for (std::size_t i = 0; i < shared.size(); ++i)
    fmt::print("{:16} {:10} {:.3f}\n", shared[i].name, shared[i].group, x[i]);
  for (std::size_t i = 0; i < fit.kinds(); ++i) {
    const std::string& id = fit.catalogue.taxa()[i].id;
    fmt::print("{}{} {:.0f}", i % 5 ? "  " : "\n", id, fit.kind(x, id).heat_sum);
  }
  fmt::print("\n\n");
  std::map<std::string, std::vector<double>> left_out;
  if (!has("--quick")) {
    for (const Observation& row : fit.evidence.rows) left_out.emplace(row.place, x);
    for (auto& [place, y] : left_out) y = minimiser.without(x, place);
  }
  const std::vector<Judged> judged =
      judge(fit.evidence, [&](const Observation& row, const std::string& id) {
        const auto y = left_out.find(row.place);
        return fit.kind(y == left_out.end() ? x : y->second, id);
      });
  print_figures(judged, has("--stored"));
  const SpreadLaw law = calibrated(judged);
  print_coverage(judged, law);
  for (int i = 1; i + 1 < argc; ++i) {
    if (!std::strcmp(argv[i], "--write")) write_table(fit, x, law, argv[i + 1]);
  }
  if (has("--rows")) {
    for (const Judged& j : judged) {
      const Observation& o = *j.row;
      fmt::print("row;{};{};{};{};{};{};{};{};{};{};{:.1f};{:.1f};{:.1f}\n",
                 static_cast<int>(o.kept), o.garden, o.label, o.taxon, o.other,
                 static_cast<int>(o.says), static_cast<int>(o.event), o.named ? 1 : 0,
                 o.check ? 1 : 0, fit.evidence.ground_keys[o.ground], o.middle(), o.sd, j.error);
    }
  }
  for (const ForcingTarget& t : fit.evidence.forcing) {
    fmt::print(
        "{:24} {:4.1f} weeks at {:.1f} then {:.0f} degC: {:.1f} days, published {:.0f} to "
        "{:.0f} {}\n",
        t.taxon, t.cold_weeks, t.cold_c, t.then_c, forced_days(fit.kind(x, t.taxon), t), t.days_low,
        t.days_high, t.fitted ? "" : "(check)");
  }
  if (has("--order")) {
    print_order([&](const std::string& id) { return fit.kind(x, id); }, fit.catalogue);
  }
  if (has("--warmth")) print_warmth([&](const std::string& id) { return fit.kind(x, id); });
}
