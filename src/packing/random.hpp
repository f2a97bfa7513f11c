#pragma once

#include <cmath>
#include <cstddef>
#include <cstdint>

namespace bulbwright::packing {

/// SplitMix64 with draws of our own, the same on every machine.
/// Source: Steele, Lea, Flood, "Fast splittable pseudorandom number generators", OOPSLA 2014.
class Random {
 public:
  explicit Random(std::uint64_t seed) : state_{seed} {}

  std::uint64_t bits() {
    state_ += 0x9e3779b97f4a7c15ULL;
    std::uint64_t z = state_;
    z = (z ^ (z >> 30U)) * 0xbf58476d1ce4e5b9ULL;
    z = (z ^ (z >> 27U)) * 0x94d049bb133111ebULL;
    return z ^ (z >> 31U);
  }
  /// In [0, 1), a multiple of 2^-53.
  double unit() { return static_cast<double>(bits() >> 11U) * 0x1.0p-53; }
  double between(double low, double high) { return low + (high - low) * unit(); }
  /// In [0, n); n is far below 2^32, so the bias of the remainder is nil in practice.
  std::size_t below(std::size_t n) { return bits() % n; }
  /// An exponential waiting time of mean 1, rounded to 2^-20: a logarithm may differ in its last
  /// bit between machines.
  double waiting() { return std::nearbyint(-std::log(1.0 - unit()) * 0x1.0p20) * 0x1.0p-20; }
  /// Between low and high, both above nought, evenly in the logarithm; a multiple of 2^-20 of high
  /// for the same reason.
  double scaled(double low, double high) {
    const double share = std::exp(unit() * std::log(low / high));
    return high * (std::nearbyint(share * 0x1.0p20) * 0x1.0p-20);
  }

 private:
  std::uint64_t state_;
};

/// A point of the unit circle from two rational operations: no sine, no cosine. `turn` in [0, 1)
/// goes once round, not quite evenly.
struct Direction {
  double x = 1.0;
  double y = 0.0;
};
inline Direction direction(double turn) {
  const int quarter = static_cast<int>(turn * 4.0);
  const double q = turn * 4.0 - quarter;
  // Half-angle tangent; this cubic makes equal steps of q nearly equal steps of angle.
  const double h = q * (0.7854 + q * q * 0.2146);
  const double c = (1.0 - h * h) / (1.0 + h * h), s = 2.0 * h / (1.0 + h * h);
  switch (quarter & 3) {
    case 0:
      return {c, s};
    case 1:
      return {-s, c};
    case 2:
      return {-c, -s};
    default:
      return {s, -c};
  }
}

/// The k-th of n directions evenly round. Sine and cosine differ in the last bit between machines
/// (never by more than 1e-15), so they are rounded to 2^-40: the same everywhere.
inline Direction even_direction(std::size_t k, std::size_t n) {
  const double angle =
      2.0 * 3.14159265358979323846 * static_cast<double>(k) / static_cast<double>(n);
  const auto tidy = [](double v) { return std::nearbyint(v * 0x1.0p40) * 0x1.0p-40; };
  return {tidy(std::cos(angle)), tidy(std::sin(angle))};
}

}  // namespace bulbwright::packing
