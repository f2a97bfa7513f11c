#include "packing/near_pairs.hpp"

#include <algorithm>
#include <cstring>
#include <numeric>

#include "packing/vector.hpp"

namespace bulbwright::packing {
namespace {

constexpr std::size_t one_cell_up_to = 100;  ///< below, testing all pairs beats sorting
constexpr float far_off = 1e9F;

}  // namespace

NearPairs::NearPairs(const std::vector<double>& reach)
    : reach_{&reach}, reach_max_{greatest(reach)}, skin_{0.7 * reach_max_} {}

void NearPairs::keep(const double* centres) {
  const std::size_t n = reach_->size();
  const double limit = skin_ * skin_ / 4.0;
  bool stale = at_.size() != 2 * n;
  for (std::size_t i = 0; i < n && !stale; ++i) {
    const Pair d = load(centres + 2 * i) - load(&at_[2 * i]);
    const Pair d2 = d * d;
    stale = !(d2[0] + d2[1] <= limit);
  }
  if (!stale) return;
  at_.assign(centres, centres + 2 * n);
  list();
}

void NearPairs::keep(const float* centres) {
  const std::size_t n = reach_->size();
  const auto limit = static_cast<float>(skin_ * skin_ / 4.0 * 0.999);
  bool stale = at_nearly_.size() != 2 * n;
  std::size_t i = 0;
  for (; i + 2 <= n && !stale; i += 2) {
    const Four d = load(centres + 2 * i) - load(&at_nearly_[2 * i]);
    const Four d2 = d * d;
    stale = !(d2[0] + d2[1] <= limit && d2[2] + d2[3] <= limit);
  }
  if (i < n && !stale) {
    const Two d = load_two(centres + 2 * i) - load_two(&at_nearly_[2 * i]);
    const Two d2 = d * d;
    stale = !(d2[0] + d2[1] <= limit);
  }
  if (!stale) return;
  at_.assign(centres, centres + 2 * n);
  list();
}

void NearPairs::sort_into_cells() {
  const std::size_t n = reach_->size();
  const double cut = 2.0 * reach_max_ + skin_;
  double x0 = at_[0], x1 = at_[0], y0 = at_[1], y1 = at_[1];
  for (std::size_t i = 1; i < n; ++i) {
    x0 = std::min(x0, at_[2 * i]);
    x1 = std::max(x1, at_[2 * i]);
    y0 = std::min(y0, at_[2 * i + 1]);
    y1 = std::max(y1, at_[2 * i + 1]);
  }
  // No cell is narrower than the cut: near discs are one cell away at most.
  const auto lines = [&](double length) {
    return n <= one_cell_up_to ? 1 : std::clamp(static_cast<int>(length / cut), 1, 256);
  };
  columns_ = lines(x1 - x0);
  rows_ = lines(y1 - y0);
  const auto line = [](double v, double low, double high, int count) {
    return count == 1 ? 0 : std::min(static_cast<int>((v - low) / (high - low) * count), count - 1);
  };
  cell_of_.resize(n);
  cell_start_.assign(static_cast<std::size_t>(columns_ * rows_) + 1, 0);
  for (std::size_t i = 0; i < n; ++i) {
    cell_of_[i] =
        line(at_[2 * i + 1], y0, y1, rows_) * columns_ + line(at_[2 * i], x0, x1, columns_);
    ++cell_start_[static_cast<std::size_t>(cell_of_[i]) + 1];
  }
  std::partial_sum(cell_start_.begin(), cell_start_.end(), cell_start_.begin());
  std::vector<int> next(cell_start_.begin(), cell_start_.end() - 1);
  in_cells_.resize(n);
  // A few places more for the last four.
  xs_.assign(n + 3, far_off);
  ys_.assign(n + 3, far_off);
  for (std::size_t i = 0; i < n; ++i) {
    const auto place = static_cast<std::size_t>(next[static_cast<std::size_t>(cell_of_[i])]++);
    in_cells_[place] = static_cast<int>(i);
    xs_[place] = static_cast<float>(at_[2 * i]);
    ys_[place] = static_cast<float>(at_[2 * i + 1]);
  }
}

void NearPairs::list_run(std::size_t place, std::size_t from, std::size_t to) {
  // Four distances at a time in single precision: near pairs are kept with a little to spare.
  using Flags = int __attribute__((vector_size(16)));
  const auto i = static_cast<std::size_t>(in_cells_[place]);
  const auto near = static_cast<float>(((*reach_)[i] + reach_max_ + skin_) * 1.0001);
  const float x = xs_[place], y = ys_[place], limit = near * near;
  for (std::size_t j = from; j < to; j += 4) {
    const Four dx = load(&xs_[j]) - x, dy = load(&ys_[j]) - y;
    const Flags flags = dx * dx + dy * dy < limit;
    long long any[2];
    std::memcpy(any, &flags, sizeof any);
    if ((any[0] | any[1]) == 0) continue;
    for (std::size_t k = 0; k < std::min<std::size_t>(4, to - j); ++k) {
      if (flags[k] != 0) partner_.push_back(in_cells_[j + k]);
    }
  }
  work_ += static_cast<long>(to - std::min(from, to)) / 12 + 1;
}

void NearPairs::list() {
  sort_into_cells();
  const std::size_t n = reach_->size();
  const auto start_of = [&](int row, int column) {
    return static_cast<std::size_t>(cell_start_[static_cast<std::size_t>(row * columns_ + column)]);
  };
  partner_.clear();
  runs_.resize(n);
  for (std::size_t place = 0; place < n; ++place) {
    const auto i = static_cast<std::size_t>(in_cells_[place]);
    const int row = cell_of_[i] / columns_, column = cell_of_[i] % columns_;
    const int left = std::max(0, column - 1), right = std::min(columns_ - 1, column + 1);
    runs_[i].from = partner_.size();
    list_run(place, place + 1, start_of(row, right + 1));
    if (row + 1 < rows_) list_run(place, start_of(row + 1, left), start_of(row + 1, right + 1));
    runs_[i].to = partner_.size();
  }
  at_nearly_.assign(at_.begin(), at_.end());
  fill_up();
}

void NearPairs::fill_up() {
  const std::size_t n = reach_->size();
  start_by_four_.resize(n + 1);
  by_four_.clear();
  for (std::size_t i = 0; i < n; ++i) {
    start_by_four_[i] = static_cast<int>(by_four_.size());
    const auto own = partners(i);
    by_four_.insert(by_four_.end(), own.begin(), own.end());
    while (by_four_.size() % 4 != 0) by_four_.push_back(static_cast<int>(n));
  }
  start_by_four_[n] = static_cast<int>(by_four_.size());
}

}  // namespace bulbwright::packing
