#pragma once

#include <cstddef>
#include <cstring>

namespace bulbwright::packing {

/// Two doubles at once, a compiler extension of GCC and Clang that every x86-64 and arm64 has. The
/// order of operations is written out here, so the sums are the same on every machine.
using Pair = double __attribute__((vector_size(16)));

inline Pair load(const double* p) {
  Pair v;
  std::memcpy(&v, p, sizeof v);
  return v;
}
inline void store(double* p, Pair v) {
  std::memcpy(p, &v, sizeof v);
}

/// Sum of a[i] b[i] for even n.
inline double dot(const double* a, const double* b, std::size_t n) {
  Pair s0{0.0, 0.0}, s1{0.0, 0.0};
  std::size_t i = 0;
  for (; i + 4 <= n; i += 4) {
    s0 += load(a + i) * load(b + i);
    s1 += load(a + i + 2) * load(b + i + 2);
  }
  for (; i < n; i += 2) s0 += load(a + i) * load(b + i);
  s0 += s1;
  return s0[0] + s0[1];
}

/// y += k x for even n.
inline void add_scaled(double* y, double k, const double* x, std::size_t n) {
  const Pair kk{k, k};
  for (std::size_t i = 0; i < n; i += 2) store(y + i, load(y + i) + kk * load(x + i));
}

/// out = x + k d for even n.
inline void set_sum(double* out, const double* x, double k, const double* d, std::size_t n) {
  const Pair kk{k, k};
  for (std::size_t i = 0; i < n; i += 2) store(out + i, load(x + i) + kk * load(d + i));
}

/// out = a - b for even n.
inline void set_difference(double* out, const double* a, const double* b, std::size_t n) {
  for (std::size_t i = 0; i < n; i += 2) store(out + i, load(a + i) - load(b + i));
}

/// x *= k for even n.
inline void scale(double* x, double k, std::size_t n) {
  const Pair kk{k, k};
  for (std::size_t i = 0; i < n; i += 2) store(x + i, load(x + i) * kk);
}

}  // namespace bulbwright::packing
