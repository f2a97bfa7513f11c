#include "packing/standard.hpp"

#include <algorithm>
#include <cmath>

namespace bulbwright::packing {
namespace {

constexpr double standard_length = 1000.0;

/// Steps of the proportions: width to length, margin or corner to length.
constexpr double steps_of_width = 32.0;   ///< to a doubling: 2.2 % each
constexpr double steps_of_margin = 24.0;  ///< 2.9 % each

/// Smaller margins and corners are taken for this one, of the length.
constexpr double least_margin = 0.002;

/// The k-th of the proportions; a power may differ in its last bit between machines.
double proportion(long k, double steps) {
  return std::nearbyint(std::exp2(static_cast<double>(k) / steps) * 0x1.0p40) * 0x1.0p-40;
}

/// The number of the largest proportion that is no more than this.
long proportion_below(double value, double steps) {
  return static_cast<long>(std::floor(std::log2(value) * steps + 1e-7));
}
long proportion_above(double value, double steps) {
  return static_cast<long>(std::ceil(std::log2(value) * steps - 1e-7));
}

/// What is asked for: lengths along and across, the larger along but for a half-round.
struct Wanted {
  Shape shape;
  double along, across, margin, corner;
  bool turned;
};

Wanted wanted(const Outline& outline, double margin) {
  Wanted w{outline.shape(),
           2.0 * outline.half_length(),
           outline.top() - outline.bottom(),
           margin,
           0.0,
           false};
  if (w.shape == Shape::rectangle) {  // what is deep in a rectangle is one, its corners less round
    w.along = std::max(0.0, w.along - 2.0 * margin);
    w.across = std::max(0.0, w.across - 2.0 * margin);
    w.corner = std::max(0.0, outline.corner() - margin);
    w.margin = 0.0;
  }
  if (w.shape != Shape::half_round && w.across > w.along) {
    std::swap(w.along, w.across);
    w.turned = true;
  }
  return w;
}

/// The standard of this width and the k-th margin (or corner) that is enough for it.
bool fitted(const Wanted& w, double width, long k, Nested& found) {
  const double scale =
      std::min(w.along, w.across / width) / standard_length * (1.0 + 1e-12);  // of equal lengths
  Section section{w.shape, Millimetres{standard_length}, Millimetres{standard_length * width}, {}};
  double margin = 0.0;
  const double least = std::max(w.margin, w.corner) / scale / standard_length;
  if (least > 1e-9) {
    const long index = proportion_above(std::max(least, least_margin), steps_of_margin) + k;
    margin = standard_length * proportion(index, steps_of_margin);
  } else if (k > 0) {
    return false;
  }
  if (w.shape == Shape::rectangle) {
    const double most = standard_length * std::min(1.0, width) / 2.0;
    if (margin > most && k > 0) return false;
    section.corner = Millimetres{std::min(margin, most)};
    margin = 0.0;
  }
  found = {{section, margin}, scale, 0.0, w.turned};
  if (w.shape == Shape::half_round) found.rise = w.margin - scale * margin;
  return true;
}

}  // namespace

std::vector<Nested> nested_standards(const Outline& outline, double margin) {
  const Wanted w = wanted(outline, margin);
  std::vector<Nested> all;
  if (!(w.along > 0.0) || !(w.across > 0.0)) return all;
  if (w.shape == Shape::round) {
    const double room = w.along - 2.0 * margin;
    if (!(room > 0.0)) return all;
    const Millimetres size{standard_length};
    all.push_back({{{Shape::round, size, size, {}}, 0.0}, room / standard_length, 0.0, false});
    return all;
  }
  const long below = proportion_below(w.across / w.along, steps_of_width);
  const long widest = w.shape == Shape::half_round ? below + 2 : 0;  // others lie lengthwise
  struct Step {
    long width, margin;
  };
  for (const Step step : {Step{0, 0}, {1, 0}, {-1, 0}, {0, 1}}) {
    const long k = below + step.width;
    Nested nested;
    if (k > widest || !fitted(w, proportion(k, steps_of_width), step.margin, nested)) continue;
    const Outline body{nested.standard.section};
    if (nested.standard.margin < body.inradius()) all.push_back(nested);
  }
  return all;
}

}  // namespace bulbwright::packing
