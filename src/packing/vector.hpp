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

/// Four floats at once, likewise.
using Four = float __attribute__((vector_size(16)));

inline Four load(const float* p) {
  Four v;
  std::memcpy(&v, p, sizeof v);
  return v;
}
inline void store(float* p, Four v) {
  std::memcpy(p, &v, sizeof v);
}

inline double sum_of(Four s) {
  return (static_cast<double>(s[0]) + static_cast<double>(s[1])) +
         (static_cast<double>(s[2]) + static_cast<double>(s[3]));
}
inline double sum_of(Four s0, Four s1, Four s2, Four s3) {
  return sum_of((s0 + s1) + (s2 + s3));
}

/// Sum of a[i] b[i] for n a multiple of 16.
inline double dot(const float* a, const float* b, std::size_t n) {
  Four s0{}, s1{}, s2{}, s3{};
  for (std::size_t i = 0; i < n; i += 16) {
    s0 += load(a + i) * load(b + i);
    s1 += load(a + i + 4) * load(b + i + 4);
    s2 += load(a + i + 8) * load(b + i + 8);
    s3 += load(a + i + 12) * load(b + i + 12);
  }
  return sum_of(s0, s1, s2, s3);
}

/// Two floats at once: one centre.
using Two = float __attribute__((vector_size(8)));

inline Two load_two(const float* p) {
  Two v;
  std::memcpy(&v, p, sizeof v);
  return v;
}
inline void store(float* p, Two v) {
  std::memcpy(p, &v, sizeof v);
}
inline Four join(Two a, Two b) {
  return __builtin_shufflevector(a, b, 0, 1, 2, 3);
}
inline Two low(Four v) {
  return __builtin_shufflevector(v, v, 0, 1);
}
inline Two high(Four v) {
  return __builtin_shufflevector(v, v, 2, 3);
}

/// Four numbers in single precision.
inline Four load_four(const float* p) {
  return load(p);
}
inline Four load_four(const double* p) {
  return Four{static_cast<float>(p[0]), static_cast<float>(p[1]), static_cast<float>(p[2]),
              static_cast<float>(p[3])};
}

/// a - b of four numbers, in single precision.
inline Four difference(const float* a, const float* b) {
  return load(a) - load(b);
}
inline Four difference(const double* a, const double* b) {
  const Pair low = load(a) - load(b), high = load(a + 2) - load(b + 2);
  return Four{static_cast<float>(low[0]), static_cast<float>(low[1]), static_cast<float>(high[0]),
              static_cast<float>(high[1])};
}

/// y += k x for n a multiple of 16; the sum of the new y[i] z[i] as dot() has it.
inline double add_scaled_and_dot(float* y, float k, const float* x, const float* z, std::size_t n) {
  const Four kk{k, k, k, k};
  Four s0{}, s1{}, s2{}, s3{};
  for (std::size_t i = 0; i < n; i += 16) {
    const Four y0 = load(y + i) + kk * load(x + i);
    const Four y1 = load(y + i + 4) + kk * load(x + i + 4);
    const Four y2 = load(y + i + 8) + kk * load(x + i + 8);
    const Four y3 = load(y + i + 12) + kk * load(x + i + 12);
    store(y + i, y0);
    store(y + i + 4, y1);
    store(y + i + 8, y2);
    store(y + i + 12, y3);
    s0 += y0 * load(z + i);
    s1 += y1 * load(z + i + 4);
    s2 += y2 * load(z + i + 8);
    s3 += y3 * load(z + i + 12);
  }
  return sum_of(s0, s1, s2, s3);
}

/// y += k x for n a multiple of 16.
inline void add_scaled(float* y, float k, const float* x, std::size_t n) {
  const Four kk{k, k, k, k};
  for (std::size_t i = 0; i < n; i += 16) {
    store(y + i, load(y + i) + kk * load(x + i));
    store(y + i + 4, load(y + i + 4) + kk * load(x + i + 4));
    store(y + i + 8, load(y + i + 8) + kk * load(x + i + 8));
    store(y + i + 12, load(y + i + 12) + kk * load(x + i + 12));
  }
}

/// Sum of a[i] b[i] for n a multiple of 16.
inline double dot(const double* a, const float* b, std::size_t n) {
  Pair s0{0.0, 0.0}, s1{0.0, 0.0};
  for (std::size_t i = 0; i < n; i += 4) {
    s0 += load(a + i) * Pair{static_cast<double>(b[i]), static_cast<double>(b[i + 1])};
    s1 += load(a + i + 2) * Pair{static_cast<double>(b[i + 2]), static_cast<double>(b[i + 3])};
  }
  s0 += s1;
  return s0[0] + s0[1];
}

/// z = y + k x for n a multiple of 16.
inline void add_scaled_to(float* z, const float* y, float k, const float* x, std::size_t n) {
  const Four kk{k, k, k, k};
  for (std::size_t i = 0; i < n; i += 4) store(z + i, load(y + i) + kk * load(x + i));
}
inline void add_scaled_to(double* z, const double* y, double k, const float* x, std::size_t n) {
  const Pair kk{k, k};
  for (std::size_t i = 0; i < n; i += 2) {
    store(z + i, load(y + i) + kk * Pair{static_cast<double>(x[i]), static_cast<double>(x[i + 1])});
  }
}

/// x *= k for n a multiple of 4.
inline void scale(float* x, float k, std::size_t n) {
  const Four kk{k, k, k, k};
  for (std::size_t i = 0; i < n; i += 4) store(x + i, load(x + i) * kk);
}

}  // namespace bulbwright::packing
