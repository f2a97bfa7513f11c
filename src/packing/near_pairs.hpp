#pragma once

#include <algorithm>
#include <cstddef>
#include <span>
#include <vector>

namespace bulbwright::packing {

/// The greatest of what all discs want, mm; 0 for none.
inline double greatest(const std::vector<double>& of_discs) {
  return of_discs.empty() ? 0.0 : *std::max_element(of_discs.begin(), of_discs.end());
}

/// The pairs of discs that are near enough to overlap soon. They are listed anew only when a centre
/// has moved by more than half the list's skin, so that keeping the list costs O(n) most times.
/// Centres are laid out x0 y0 x1 y1 ..., mm.
class NearPairs {
 public:
  /// Centres i and j want a distance of reach[i] + reach[j]; `reach` has to outlive the list.
  explicit NearPairs(const std::vector<double>& reach);

  /// Sees to it that every pair nearer than it wants at these centres is listed.
  void keep(const double* centres);
  void keep(const float* centres);

  /// The partners of disc i; each pair is listed at one of its two.
  [[nodiscard]] std::span<const int> partners(std::size_t i) const {
    return {partner_.data() + runs_[i].from, partner_.data() + runs_[i].to};
  }
  /// The same filled up to a multiple of four with n, the index behind the last disc.
  [[nodiscard]] std::span<const int> partners_by_four(std::size_t i) const {
    return {by_four_.data() + start_by_four_[i], by_four_.data() + start_by_four_[i + 1]};
  }
  [[nodiscard]] std::size_t size() const { return partner_.size(); }

  /// Deterministic count of work done: pair tests.
  [[nodiscard]] long work() const { return work_; }

 private:
  /// The partners of a disc in partner_.
  struct Run {
    std::size_t from = 0, to = 0;
  };

  void list();
  void sort_into_cells();
  void list_run(std::size_t place, std::size_t from, std::size_t to);
  void fill_up();

  const std::vector<double>* reach_;
  double reach_max_;
  double skin_;
  std::vector<double> at_;        ///< the centres when last listed
  std::vector<float> at_nearly_;  ///< the same in single precision
  int columns_ = 1, rows_ = 1;
  std::vector<int> cell_of_, cell_start_;  ///< cells row by row
  std::vector<int> in_cells_;              ///< the discs cell by cell
  std::vector<float> xs_, ys_;             ///< their centres
  std::vector<int> partner_, start_by_four_, by_four_;
  std::vector<Run> runs_;
  long work_ = 0;
};

}  // namespace bulbwright::packing
