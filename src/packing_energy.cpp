#include "packing_energy.hpp"

#include <algorithm>
#include <cmath>
#include <cstring>

#include "packing_vector.hpp"

namespace bulbwright::packing {
namespace {


constexpr std::size_t list_all_up_to = 150;  ///< below, testing all pairs beats the cell grid

}  // namespace

Discs equal_discs(std::size_t n, double spacing, double margin) {
  return {std::vector<double>(n, spacing / 2.0), std::vector<double>(n, margin)};
}

Energy::Energy(const Outline& outline, const Discs& discs) : outline_{&outline}, discs_{&discs} {
  reach_max_ = 0.0;
  for (const double r : discs.reach) reach_max_ = std::max(reach_max_, r);
  equal_ = std::all_of(discs.reach.begin(), discs.reach.end(),
                       [&](double r) { return r == reach_max_; });
  skin_ = 0.7 * reach_max_;
  per_length_ = reach_max_ > 0.0 ? 0.25 / reach_max_ : 0.0;
  const bool curved = outline.shape() == Shape::oval || outline.shape() == Shape::half_round;
  wall_cost_ = curved ? 28 : 8;  // and the minimiser's own work for a disc
}

void Energy::keep_list(const Coordinates& x) {
  const std::size_t n = x.size() / 2;
  centres_.resize(2 * n);
  for (std::size_t i = 0; i < n; ++i) {
    centres_[2 * i] = x[i];
    centres_[2 * i + 1] = x[n + i];
  }
  keep_list(centres_.data());
}

void Energy::keep_list(const double* centres) {
  const std::size_t n = discs_->size();
  const double limit = skin_ * skin_ / 4.0;
  bool stale = listed_at_.size() != 2 * n;
  for (std::size_t i = 0; i < n && !stale; ++i) {
    const Pair d = load(centres + 2 * i) - load(&listed_at_[2 * i]);
    const Pair d2 = d * d;
    stale = !(d2[0] + d2[1] <= limit);
  }
  if (!stale) return;
  listed_at_.assign(centres, centres + 2 * n);
  list_pairs();
}

void Energy::list_all_pairs() {
  // Four distances at a time in single precision: near pairs are kept with a little to spare.
  using Flags = int __attribute__((vector_size(16)));
  const std::size_t n = discs_->size(), padded = (n + 3) / 4 * 4;
  row_.assign(2 * padded, 1e18F);
  for (std::size_t i = 0; i < n; ++i) {
    row_[i] = static_cast<float>(listed_at_[2 * i]);
    row_[padded + i] = static_cast<float>(listed_at_[2 * i + 1]);
  }
  const float* xs = row_.data();
  const float* ys = row_.data() + padded;
  partner_.resize(n * (n - 1) / 2 + 4);
  int count = 0;
  for (std::size_t i = 0; i < n; ++i) {
    start_[i] = count;
    const float near = static_cast<float>((discs_->reach[i] + reach_max_ + skin_) * 1.0001);
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
  work_ += static_cast<long>(n * n) / 24;
}

void Energy::list_pairs() {
  const std::size_t n = discs_->size();
  start_.resize(n + 1);
  if (n <= list_all_up_to) {
    list_all_pairs();
    return;
  }
  partner_.clear();
  const double cut = 2.0 * reach_max_ + skin_;
  const auto x_of = [&](std::size_t i) { return listed_at_[2 * i]; };
  const auto y_of = [&](std::size_t i) { return listed_at_[2 * i + 1]; };
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
        const double near = discs_->reach[i] + discs_->reach[j] + skin_;
        if (dx * dx + dy * dy < near * near) partner_.push_back(static_cast<int>(j));
      }
      work_ += to - from;
    }
  }
  start_[n] = static_cast<int>(partner_.size());
}

template <bool equal>
double Energy::pairs_energy(const double* centres, double* gradient) const {
  const std::size_t n = discs_->size();
  const double* reach = discs_->reach.data();
  const double pull_factor = 4.0 * per_length_;
  const double both = 2.0 * reach_max_ + extra_;
  const Pair same{both * both, both * both}, none{0.0, 0.0};
  Pair energy = none;
  for (std::size_t i = 0; i < n; ++i) {
    const Pair at = load(centres + 2 * i);
    Pair pulled = none;
    const int* const end = partner_.data() + start_[i + 1];
    const int* partner = partner_.data() + start_[i];
    for (; partner + 1 < end; partner += 2) {  // two partners at once, without a branch
      const std::size_t j = static_cast<std::size_t>(partner[0]);
      const std::size_t k = static_cast<std::size_t>(partner[1]);
      const Pair dj = at - load(centres + 2 * j), dk = at - load(centres + 2 * k);
      const Pair sj = dj * dj, sk = dk * dk;
      const Pair d2 = __builtin_shufflevector(sj, sk, 0, 2) + __builtin_shufflevector(sj, sk, 1, 3);
      Pair want2 = same;
      if constexpr (!equal) {
        const Pair want{reach[i] + reach[j] + extra_, reach[i] + reach[k] + extra_};
        want2 = want * want;
      }
      const Pair room = want2 - d2;
      const Pair over = (room > none ? room : none) * per_length_;
      energy += over * over;
      const Pair pull = over * pull_factor;
      const Pair along_j = __builtin_shufflevector(pull, pull, 0, 0) * dj;
      const Pair along_k = __builtin_shufflevector(pull, pull, 1, 1) * dk;
      pulled -= along_j + along_k;
      store(gradient + 2 * j, load(gradient + 2 * j) + along_j);
      store(gradient + 2 * k, load(gradient + 2 * k) + along_k);
    }
    if (partner != end) {
      const std::size_t j = static_cast<std::size_t>(*partner);
      const Pair d = at - load(centres + 2 * j), d2 = d * d;
      double want2 = same[0];
      if constexpr (!equal) {
        const double want = reach[i] + reach[j] + extra_;
        want2 = want * want;
      }
      const double room = want2 - (d2[0] + d2[1]);
      const double over = (room > 0.0 ? room : 0.0) * per_length_, pull = over * pull_factor;
      energy += Pair{over * over, 0.0};
      const Pair along = Pair{pull, pull} * d;
      pulled -= along;
      store(gradient + 2 * j, load(gradient + 2 * j) + along);
    }
    store(gradient + 2 * i, load(gradient + 2 * i) + pulled);
  }
  return energy[0] + energy[1];
}

double Energy::walls_energy(const double* centres, double* gradient) const {
  const std::size_t n = discs_->size();
  double energy = 0.0;
  for (std::size_t i = 0; i < n; ++i) {
    const Point p{centres[2 * i], centres[2 * i + 1]};
    const double margin = discs_->margin[i] + extra_;
    if (outline_->clearly_deeper(p, margin)) continue;
    energy += outline_->push(p, margin, gradient[2 * i], gradient[2 * i + 1]);
  }
  return energy;
}

double Energy::of_centres(const double* centres, double* gradient) {
  const std::size_t n = discs_->size();
  keep_list(centres);
  std::fill_n(gradient, 2 * n, 0.0);
  const double energy =
      equal_ ? pairs_energy<true>(centres, gradient) : pairs_energy<false>(centres, gradient);
  work_ += static_cast<long>(start_[n]) + wall_cost_ * static_cast<long>(n);
  return energy + walls_energy(centres, gradient);
}

double Energy::operator()(const Coordinates& x, Coordinates& gradient) {
  const std::size_t n = x.size() / 2;
  keep_list(x);
  Coordinates at = centres_;
  pulls_.resize(2 * n);
  const double energy = of_centres(at.data(), pulls_.data());
  gradient.resize(2 * n);
  for (std::size_t i = 0; i < n; ++i) {
    gradient[i] = pulls_[2 * i];
    gradient[n + i] = pulls_[2 * i + 1];
  }
  return energy;
}

void Energy::share_by_disc(const Coordinates& x, std::vector<double>& share) {
  const std::size_t n = x.size() / 2;
  keep_list(x);
  share.assign(n, 0.0);
  for (std::size_t i = 0; i < n; ++i) {
    for (int k = start_[i]; k < start_[i + 1]; ++k) {
      const std::size_t j = static_cast<std::size_t>(partner_[static_cast<std::size_t>(k)]);
      const double dx = x[i] - x[j], dy = x[n + i] - x[n + j];
      const double want = discs_->reach[i] + discs_->reach[j] + extra_;
      const double over = (want * want - dx * dx - dy * dy) * per_length_;
      if (over <= 0.0) continue;
      share[i] += over * over;
      share[j] += over * over;
    }
    double unused_x = 0.0, unused_y = 0.0;
    share[i] += outline_->push({x[i], x[n + i]}, discs_->margin[i] + extra_, unused_x, unused_y);
  }
  work_ += static_cast<long>(start_[n]) + wall_cost_ * static_cast<long>(n);
}

double Energy::mean_overlap(const Coordinates& x) {
  contacts(x, contacts_);
  double squares = 0.0, sum = 0.0;
  for (const Contact& c : contacts_) {
    squares += c.overlap * c.overlap;
    sum += c.overlap;
  }
  return sum > 0.0 ? squares / sum : 0.0;
}

double Energy::worst_overlap(const Coordinates& x) {
  const std::size_t n = x.size() / 2;
  keep_list(x);
  double worst = -1e300;
  for (std::size_t i = 0; i < n; ++i) {
    for (int k = start_[i]; k < start_[i + 1]; ++k) {
      const std::size_t j = static_cast<std::size_t>(partner_[static_cast<std::size_t>(k)]);
      const double dx = x[i] - x[j], dy = x[n + i] - x[n + j];
      worst = std::max(worst, discs_->reach[i] + discs_->reach[j] - std::sqrt(dx * dx + dy * dy));
    }
    if (outline_->clearly_deeper({x[i], x[n + i]}, discs_->margin[i])) continue;
    worst = std::max(worst, discs_->margin[i] - outline_->depth({x[i], x[n + i]}));
  }
  work_ += static_cast<long>(start_[n]) + wall_cost_ * static_cast<long>(n);
  return worst;
}

void Energy::contacts(const Coordinates& x, std::vector<Contact>& found, double near) {
  const std::size_t n = x.size() / 2;
  keep_list(x);
  found.clear();
  for (std::size_t i = 0; i < n; ++i) {
    for (int k = start_[i]; k < start_[i + 1]; ++k) {
      const std::size_t j = static_cast<std::size_t>(partner_[static_cast<std::size_t>(k)]);
      const double dx = x[i] - x[j], dy = x[n + i] - x[n + j];
      const double want = discs_->reach[i] + discs_->reach[j] + extra_;
      const double d2 = dx * dx + dy * dy;
      const double over = (want * want - d2) * per_length_;
      if (over <= -near) continue;
      found.push_back({i, j, dx * 2.0 * per_length_, dy * 2.0 * per_length_, over});
    }
    double gx = 0.0, gy = 0.0;
    const Point p{x[i], x[n + i]};
    const double margin = discs_->margin[i] + extra_ + near;
    if (outline_->clearly_deeper(p, margin)) continue;
    const double e = outline_->push(p, margin, gx, gy);
    if (e <= 0.0) continue;
    const double over = std::sqrt(e);  // two walls at once act as one towards their corner
    found.push_back({i, Contact::wall, -gx / (2.0 * over), -gy / (2.0 * over), over - near});
  }
  work_ += static_cast<long>(start_[n]) + wall_cost_ * static_cast<long>(n);
}

}  // namespace bulbwright::packing
