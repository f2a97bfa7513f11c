#include "packing/energy.hpp"

#include <algorithm>
#include <cmath>

#include "packing/vector.hpp"

namespace bulbwright::packing {

Discs equal_discs(std::size_t n, double spacing, double margin) {
  return {std::vector<double>(n, spacing / 2.0), std::vector<double>(n, margin)};
}

Energy::Energy(const Outline& outline, const Discs& discs)
    : outline_{&outline}, discs_{&discs}, reach_max_{greatest(discs.reach)}, near_{discs.reach} {
  const auto all = [](const std::vector<double>& v) {
    return std::all_of(v.begin(), v.end(), [&](double each) { return each == v.front(); });
  };
  equal_ = all(discs.reach) && all(discs.margin);
  per_length_ = reach_max_ > 0.0 ? 0.25 / reach_max_ : 0.0;
  const bool curved = outline.shape() == Shape::oval || outline.shape() == Shape::half_round;
  reach_.assign(discs.reach.begin(), discs.reach.end());
  reach_.push_back(0.0F);  // of the centre that is far from all
  wall_cost_ = curved ? 20 : 0;
}

void Energy::keep_list(const Coordinates& x) {
  const std::size_t n = x.size() / 2;
  centres_.resize(2 * n);
  for (std::size_t i = 0; i < n; ++i) {
    centres_[2 * i] = x[i];
    centres_[2 * i + 1] = x[n + i];
  }
  near_.keep(centres_.data());
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
    const auto partners = near_.partners(i);
    const int* const end = partners.data() + partners.size();
    const int* partner = partners.data();
    for (; end - partner >= 2; partner += 2) {  // two partners at once, without a branch
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

template <bool equal>
double Energy::pairs_energy(const float* centres, float* gradient) const {
  const std::size_t n = discs_->size();
  const auto per_length = static_cast<float>(per_length_);
  const float pull_factor = 4.0F * per_length;
  const auto extra = static_cast<float>(extra_);
  const auto both = static_cast<float>(2.0 * reach_max_ + extra_);
  const float* reach = reach_.data();
  const float both2 = both * both;
  const Four same{both2, both2, both2, both2}, none{};
  Four energy = none;
  for (std::size_t i = 0; i < n; ++i) {
    const Two centre = load_two(centres + 2 * i);
    const Four at = join(centre, centre);
    Four pulled = none;
    const auto partners = near_.partners_by_four(i);
    const int* const end = partners.data() + partners.size();
    for (const int* partner = partners.data(); partner != end; partner += 4) {
      const std::size_t j = static_cast<std::size_t>(partner[0]);
      const std::size_t k = static_cast<std::size_t>(partner[1]);
      const std::size_t l = static_cast<std::size_t>(partner[2]);
      const std::size_t m = static_cast<std::size_t>(partner[3]);
      const Four djk = at - join(load_two(centres + 2 * j), load_two(centres + 2 * k));
      const Four dlm = at - join(load_two(centres + 2 * l), load_two(centres + 2 * m));
      const Four sjk = djk * djk, slm = dlm * dlm;
      const Four d2 = __builtin_shufflevector(sjk, slm, 0, 2, 4, 6) +
                      __builtin_shufflevector(sjk, slm, 1, 3, 5, 7);
      Four want2 = same;
      if constexpr (!equal) {
        const Four want = Four{reach[j], reach[k], reach[l], reach[m]} + (reach[i] + extra);
        want2 = want * want;
      }
      const Four room = want2 - d2;
      const Four over = (room > none ? room : none) * per_length;
      energy += over * over;
      const Four pull = over * pull_factor;
      const Four along_jk = __builtin_shufflevector(pull, pull, 0, 0, 1, 1) * djk;
      const Four along_lm = __builtin_shufflevector(pull, pull, 2, 2, 3, 3) * dlm;
      pulled -= along_jk + along_lm;
      store(gradient + 2 * j, load_two(gradient + 2 * j) + low(along_jk));
      store(gradient + 2 * k, load_two(gradient + 2 * k) + high(along_jk));
      store(gradient + 2 * l, load_two(gradient + 2 * l) + low(along_lm));
      store(gradient + 2 * m, load_two(gradient + 2 * m) + high(along_lm));
    }
    store(gradient + 2 * i, load_two(gradient + 2 * i) + (low(pulled) + high(pulled)));
  }
  return sum_of(energy);
}

template <class Real>
double Energy::round_wall_energy(const Real* centres, Real room, Real* gradient) const {
  double energy = 0.0;
  for (std::size_t i = 0; i < discs_->size(); ++i) {
    const Real x = centres[2 * i], y = centres[2 * i + 1], d2 = x * x + y * y;
    if (d2 <= room * room) continue;
    const Real d = std::sqrt(d2), over = d - room, pull = 2 * over / d;
    gradient[2 * i] += pull * x;
    gradient[2 * i + 1] += pull * y;
    energy += static_cast<double>(over * over);
  }
  return energy;
}

template <class Real>
double Energy::walls_energy(const Real* centres, Real* gradient) const {
  if (outline_->shape() == Shape::round && equal_) {
    const double room = outline_->half_length() - discs_->margin.front() - extra_;
    if (room > 0.0) return round_wall_energy(centres, static_cast<Real>(room), gradient);
  }
  double energy = 0.0;
  for (std::size_t i = 0; i < discs_->size(); ++i) {
    const Point p{static_cast<double>(centres[2 * i]), static_cast<double>(centres[2 * i + 1])};
    const double margin = discs_->margin[i] + extra_;
    if (outline_->clearly_deeper(p, margin)) continue;
    double gx = 0.0, gy = 0.0;
    energy += outline_->push(p, margin, gx, gy);
    gradient[2 * i] += static_cast<Real>(gx);
    gradient[2 * i + 1] += static_cast<Real>(gy);
  }
  return energy;
}

double Energy::of_centres(const float* centres, float* gradient) {
  const std::size_t n = discs_->size();
  near_.keep(centres);
  std::fill_n(gradient, 2 * n + 2, 0.0F);
  const double energy =
      equal_ ? pairs_energy<true>(centres, gradient) : pairs_energy<false>(centres, gradient);
  work_ += evaluation_cost(0.5);
  return energy + walls_energy(centres, gradient);
}

double Energy::of_centres(const double* centres, double* gradient) {
  const std::size_t n = discs_->size();
  near_.keep(centres);
  std::fill_n(gradient, 2 * n, 0.0);
  const double energy =
      equal_ ? pairs_energy<true>(centres, gradient) : pairs_energy<false>(centres, gradient);
  work_ += evaluation_cost(1.0);
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
    for (const int partner : near_.partners(i)) {
      const auto j = static_cast<std::size_t>(partner);
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
  work_ += evaluation_cost(1.0);
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
    for (const int partner : near_.partners(i)) {
      const auto j = static_cast<std::size_t>(partner);
      const double dx = x[i] - x[j], dy = x[n + i] - x[n + j];
      worst = std::max(worst, discs_->reach[i] + discs_->reach[j] - std::sqrt(dx * dx + dy * dy));
    }
    if (outline_->clearly_deeper({x[i], x[n + i]}, discs_->margin[i])) continue;
    worst = std::max(worst, discs_->margin[i] - outline_->depth({x[i], x[n + i]}));
  }
  work_ += evaluation_cost(1.0);
  return worst;
}

void Energy::contacts(const Coordinates& x, std::vector<Contact>& found, double near) {
  const std::size_t n = x.size() / 2;
  keep_list(x);
  found.clear();
  for (std::size_t i = 0; i < n; ++i) {
    for (const int partner : near_.partners(i)) {
      const auto j = static_cast<std::size_t>(partner);
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
  work_ += evaluation_cost(1.0);
}

}  // namespace bulbwright::packing
