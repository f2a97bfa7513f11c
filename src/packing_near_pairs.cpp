#include "packing_near_pairs.hpp"

#include <algorithm>
#include <cstring>

#include "packing_vector.hpp"

namespace bulbwright::packing {
namespace {

constexpr std::size_t list_all_up_to = 450;  ///< below, testing all pairs beats the cell grid

}  // namespace

NearPairs::NearPairs(const std::vector<double>& reach) : reach_{&reach} {
  for (const double r : reach) reach_max_ = std::max(reach_max_, r);
  skin_ = 0.7 * reach_max_;
}

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

void NearPairs::list() {
  start_.resize(reach_->size() + 1);
  if (reach_->size() <= list_all_up_to) {
    list_all();
  } else {
    list_by_cells();
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

void NearPairs::list_all() {
  // Four distances at a time in single precision: near pairs are kept with a little to spare.
  using Flags = int __attribute__((vector_size(16)));
  const std::size_t n = reach_->size(), padded = (n + 3) / 4 * 4;
  row_.assign(2 * padded, 1e18F);
  for (std::size_t i = 0; i < n; ++i) {
    row_[i] = static_cast<float>(at_[2 * i]);
    row_[padded + i] = static_cast<float>(at_[2 * i + 1]);
  }
  const float* xs = row_.data();
  const float* ys = row_.data() + padded;
  partner_.resize(n * (n - 1) / 2 + 4);
  int count = 0;
  for (std::size_t i = 0; i < n; ++i) {
    start_[i] = count;
    const float near = static_cast<float>(((*reach_)[i] + reach_max_ + skin_) * 1.0001);
    const float x = xs[i], y = ys[i], limit = near * near;
    for (std::size_t j = (i + 1) / 4 * 4; j < n; j += 4) {
      Four dx, dy;
      std::memcpy(&dx, xs + j, sizeof dx);
      std::memcpy(&dy, ys + j, sizeof dy);
      dx -= x;
      dy -= y;
      const Flags flags = dx * dx + dy * dy < limit;
      long long any[2];
      std::memcpy(any, &flags, sizeof any);
      if ((any[0] | any[1]) == 0) continue;
      for (std::size_t k = 0; k < 4; ++k) {
        if (flags[k] != 0 && j + k > i)
          partner_[static_cast<std::size_t>(count++)] = static_cast<int>(j + k);
      }
    }
  }
  start_[n] = count;
  partner_.resize(static_cast<std::size_t>(count));
  work_ += static_cast<long>(n * n) / 24;
}

void NearPairs::list_by_cells() {
  const std::size_t n = reach_->size();
  partner_.clear();
  const double cut = 2.0 * reach_max_ + skin_;
  const auto x_of = [&](std::size_t i) { return at_[2 * i]; };
  const auto y_of = [&](std::size_t i) { return at_[2 * i + 1]; };
  double x0 = x_of(0), x1 = x_of(0), y0 = y_of(0), y1 = y_of(0);
  for (std::size_t i = 1; i < n; ++i) {
    x0 = std::min(x0, x_of(i));
    x1 = std::max(x1, x_of(i));
    y0 = std::min(y0, y_of(i));
    y1 = std::max(y1, y_of(i));
  }
  const int columns = std::clamp(static_cast<int>((x1 - x0) / cut) + 1, 1, 256);
  const int rows = std::clamp(static_cast<int>((y1 - y0) / cut) + 1, 1, 256);
  const auto line = [](double v, double low, double high, int count) {
    const double f = high > low ? (v - low) / (high - low) * count : 0.0;
    return std::clamp(static_cast<int>(f), 0, count - 1);
  };
  // With count = floor(width / cut) + 1 a cell may be narrower than the cut; look two cells away.
  const int cells = columns * rows;
  cell_start_.assign(static_cast<std::size_t>(cells) + 1, 0);
  cell_of_.resize(n);
  for (std::size_t i = 0; i < n; ++i) {
    const int c = line(y_of(i), y0, y1, rows) * columns + line(x_of(i), x0, x1, columns);
    cell_of_[i] = c;
    ++cell_start_[static_cast<std::size_t>(c) + 1];
  }
  for (std::size_t c = 0; c < static_cast<std::size_t>(cells); ++c)
    cell_start_[c + 1] += cell_start_[c];
  in_cell_.resize(n);
  std::vector<int> next(cell_start_.begin(), cell_start_.end() - 1);
  for (std::size_t i = 0; i < n; ++i) {
    in_cell_[static_cast<std::size_t>(next[static_cast<std::size_t>(cell_of_[i])]++)] =
        static_cast<int>(i);
  }
  const double cell_w = (x1 - x0) / columns, cell_h = (y1 - y0) / rows;
  const int span_x = columns == 1 ? 0 : static_cast<int>(cut / cell_w) + 1;
  const int span_y = rows == 1 ? 0 : static_cast<int>(cut / cell_h) + 1;
  for (std::size_t i = 0; i < n; ++i) {
    start_[i] = static_cast<int>(partner_.size());
    const int row = cell_of_[i] / columns, column = cell_of_[i] % columns;
    for (int r = std::max(0, row - span_y); r <= std::min(rows - 1, row + span_y); ++r) {
      const int c0 = std::max(0, column - span_x), c1 = std::min(columns - 1, column + span_x);
      const int from = cell_start_[static_cast<std::size_t>(r * columns + c0)];
      const int to = cell_start_[static_cast<std::size_t>(r * columns + c1) + 1];
      for (int k = from; k < to; ++k) {
        const std::size_t j = static_cast<std::size_t>(in_cell_[static_cast<std::size_t>(k)]);
        if (j <= i) continue;
        const double dx = x_of(i) - x_of(j), dy = y_of(i) - y_of(j);
        const double near = (*reach_)[i] + (*reach_)[j] + skin_;
        if (dx * dx + dy * dy < near * near) partner_.push_back(static_cast<int>(j));
      }
      work_ += to - from;
    }
  }
  start_[n] = static_cast<int>(partner_.size());
}

}  // namespace bulbwright::packing
