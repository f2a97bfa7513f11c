#include "packing/bounds.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace bulbwright::packing {
namespace {

/// Container radius over disc radius of the proven optimum for n = 1 .. 14 discs.
constexpr std::array<double, 14> round_optima{
    1.0,
    2.0,
    2.15470053837925152902,
    2.4142135623730950488,
    2.70130161670407986436,
    3.0,
    3.0,
    3.30476487096248650524,
    3.61312592975275305571,
    3.81302563139812439825,
    3.92380440016308725223,
    4.02960193011618349748,
    4.23606797749978969641,
    4.3284285548608366814,
};
constexpr double round_optimum_19 = 4.863703305156273147;

/// Side over disc radius of the proven optimum for n = 1 .. 33 discs in a square.
constexpr std::array<double, 33> square_optima{
    2.0,
    3.4142135623730950488,
    3.9318516525781365735,
    4.0,
    4.8284271247461900976,
    5.32820117735137473211,
    5.73205080756887729353,
    5.863703305156273147,
    6.0,
    6.74744152323811267621,
    7.02250950343038134921,
    7.14495755427526512136,
    7.46304782885926545988,
    7.73205080756887729353,
    7.863703305156273147,
    8.0,
    8.53266034749809666443,
    8.65640235470274946422,
    8.90746093932607877383,
    8.97808335282173651652,
    9.35801995887275659283,
    9.46384509097565239113,
    9.727406610312546294,
    9.863703305156273147,
    10.0,
    10.37749820391342634434,
    10.4799830400508798304,
    10.67545369434531278815,
    10.8151200175936906689,
    10.90856833083399205077,
    11.1934033520469771161,
    11.38198242652323937524,
    11.46394403245030115685,
};

constexpr double square_optimum_36 = 12.0;

/// Ratios are compared with this much room, so that rounding of the input never breaks a proof.
constexpr double ratio_room = 4e-9;

/// n discs, and so more than n - 1, do not fit below `optimum`.
void tighten_by_optimum(Bound& bound, std::size_t n, double optimum, double ratio,
                        const char* name) {
  if (bound.most >= n && ratio < optimum * (1.0 - ratio_room)) bound = {n - 1, name};
}

template <std::size_t size>
void tighten_by_optima(Bound& bound, const std::array<double, size>& optima, double ratio,
                       const char* name) {
  for (std::size_t n = 0; n < size && n < bound.most; ++n) {
    if (ratio < optima[n] * (1.0 - ratio_room)) {  // n + 1 discs do not fit
      bound = {n, name};
      return;
    }
  }
}

Bound oler(const Outline& outline, double spacing, double margin) {
  const std::vector<Point> polygon = outline.shape() == Shape::round
                                         ? std::vector<Point>{}
                                         : surrounding_polygon(outline, margin, 360);
  auto [area, perimeter] = size_of(polygon);
  if (outline.shape() == Shape::round) {
    constexpr double pi = 3.14159265358979323846;
    const double radius = outline.half_length() - margin;
    area = pi * radius * radius;
    perimeter = 2.0 * pi * radius;
  }
  const double most =
      2.0 / std::sqrt(3.0) * area / (spacing * spacing) + perimeter / (2.0 * spacing) + 1.0;
  return {static_cast<std::size_t>(std::max(1.0, most + 1e-7)), "Oler 1961"};
}

/// Height and length of the region along one axis, from the outline's supports: never too small.
void tighten_by_width(Bound& bound, double height, double length, double spacing) {
  if (height >= spacing) return;
  const double step = std::sqrt(spacing * spacing - height * height);
  const double most = length / step + 1.0 + 1e-7;
  if (most < static_cast<double>(bound.most)) {
    bound = {static_cast<std::size_t>(most), "row in a strip"};
  }
}

}  // namespace

Bound most_points(const Outline& outline, double spacing, double margin) {
  if (margin > outline.inradius() + 2.0 * length_dust) return {0, "no room"};
  spacing -= 2.0 * length_dust;
  margin = std::min(margin - 2.0 * length_dust, outline.inradius());
  Bound bound = oler(outline, spacing, margin);
  const double height = std::max(0.0, outline.top() - outline.bottom() - 2.0 * margin);
  const double length = std::max(0.0, 2.0 * (outline.half_length() - margin));
  tighten_by_width(bound, height, length, spacing);
  tighten_by_width(bound, length, height, spacing);
  if (outline.shape() == Shape::round || outline.shape() == Shape::oval) {
    // The larger axis: an ellipse lies in that circle, and so does what is deep in it.
    const double ratio = 1.0 + std::max(height, length) / spacing;
    tighten_by_optima(bound, round_optima, ratio, "proven optimum in a circle");
    tighten_by_optimum(bound, 19, round_optimum_19, ratio, "proven optimum in a circle");
  }
  if (outline.shape() == Shape::rectangle) {
    // The larger side: a region of unequal sides lies in that square. Rounded corners only take.
    const double ratio = 2.0 + 2.0 * std::max(height, length) / spacing;
    tighten_by_optima(bound, square_optima, ratio, "proven optimum in a square");
    tighten_by_optimum(bound, 36, square_optimum_36, ratio, "proven optimum in a square");
  }
  return bound;
}

}  // namespace bulbwright::packing
