#include "scheduling/combination_search.hpp"

#include <algorithm>
#include <cstdlib>
#include <optional>

#include "flowering/open_days.hpp"

namespace bulbwright {
namespace {

using DayOptions = std::vector<std::vector<StorageOption>>;

class DaySearch {
 public:
  DaySearch(const DayOptions& options, DayWindow within, CoverageFirst order, int from_ordinary)
      : options_{options}, within_{within}, order_{order}, from_ordinary_{from_ordinary} {
    waves_.reserve(options.size());
    chosen_.assign(options.size(), 0);
  }

  void run() {
    double combinations = 1.0;
    for (const auto& kind : options_) combinations *= static_cast<double>(kind.size());
    if (combinations <= most_combinations) {
      try_all(0);
    } else {
      for (const int third : {0, 2, 1}) descend(third);
      move_pairs();
    }
  }
  [[nodiscard]] const std::optional<CombinationKey>& best() const { return best_; }
  [[nodiscard]] const std::vector<std::size_t>& choice() const { return best_choice_; }

 private:
  CombinationKey key() {
    CombinationKey key;
    waves_.clear();
    for (std::size_t kind = 0; kind < options_.size(); ++kind) {
      const StorageOption& option = options_[kind][chosen_[kind]];
      waves_.push_back({option.first, option.last});
      key.short_of_cold += option.short_of_cold ? 1 : 0;
      key.storage_weeks += option.weeks;
    }
    const OpenDays coverage = open_days_of(waves_, within_);
    key.first = -(order_ == CoverageFirst::days ? coverage.days : coverage.longest_days);
    key.second = -(order_ == CoverageFirst::days ? coverage.longest_days : coverage.days);
    key.from_ordinary = from_ordinary_;
    return key;
  }
  bool keep_if_better() {
    const CombinationKey now = key();
    if (best_ && !(now < *best_)) return false;
    best_ = now;
    best_choice_ = chosen_;
    return true;
  }
  void try_all(std::size_t kind) {
    if (kind == options_.size()) {
      keep_if_better();
      return;
    }
    for (std::size_t i = 0; i < options_[kind].size(); ++i) {
      chosen_[kind] = i;
      try_all(kind + 1);
    }
  }
  void descend(int third) {
    for (std::size_t kind = 0; kind < options_.size(); ++kind)
      chosen_[kind] = (options_[kind].size() - 1) * static_cast<std::size_t>(third) / 2;
    CombinationKey here = key();
    keep_if_better();
    for (bool changed = true; changed;) {
      changed = false;
      for (std::size_t kind = 0; kind < options_.size(); ++kind) {
        std::size_t best = chosen_[kind];
        for (std::size_t i = 0; i < options_[kind].size(); ++i) {
          chosen_[kind] = i;
          const CombinationKey now = key();
          if (!(now < here)) continue;
          here = now;
          best = i;
          changed = true;
        }
        chosen_[kind] = best;
        keep_if_better();
      }
    }
  }

  /// From the best so far: the best options of two kinds at once, until no pair betters it.
  void move_pairs() {
    for (bool changed = true; changed;) {
      changed = false;
      for (std::size_t a = 0; a + 1 < options_.size(); ++a) {
        for (std::size_t b = a + 1; b < options_.size(); ++b) {
          chosen_ = best_choice_;
          for (chosen_[a] = 0; chosen_[a] < options_[a].size(); ++chosen_[a]) {
            for (chosen_[b] = 0; chosen_[b] < options_[b].size(); ++chosen_[b]) {
              changed = keep_if_better() || changed;
            }
          }
        }
      }
    }
  }

  const DayOptions& options_;
  DayWindow within_;
  CoverageFirst order_;
  int from_ordinary_;
  std::vector<DayWindow> waves_;
  std::vector<std::size_t> chosen_;
  std::optional<CombinationKey> best_;
  std::vector<std::size_t> best_choice_;
};

}  // namespace

Combination search_combination(const TimingOptions& options, DayWindow within,
                               CoverageFirst order) {
  std::optional<Combination> best;
  for (std::size_t day = 0; day < options.days().size(); ++day) {
    DaySearch search{options.at(day), within, order,
                     std::abs(options.days()[day] - options.ordinary())};
    search.run();
    if (!best || *search.best() < best->key) best = {day, search.choice(), *search.best()};
  }
  return *best;
}

}  // namespace bulbwright
