#include "packing/standard_search.hpp"

#include <algorithm>
#include <cmath>

#include "packing/layout_search.hpp"
#include "packing/seeds.hpp"

namespace bulbwright::packing {
namespace {

/// The distance looked for first is that at which Oler's bound is n times 1 + this / sqrt(n): a
/// little more than the best layouts known have.
constexpr double bound_over_count = 0.75;

/// The searches of one question: shares of the work, each for a distance a little above what the
/// one before found.
constexpr int stages = 3;
constexpr double wider_by = 1e-3;

/// Later stages add less than this share of the spacing.
constexpr double still_to_gain = 0.015;

/// For so few places the first distance is a poor guess, mostly too short: what fits with ease is
/// widened by more, and not given up.
constexpr std::size_t few_places = 30;
constexpr double much_wider_by = 0.02;

double hopeful_spacing(const Outline& outline, double margin, std::size_t n) {
  const std::vector<Point> body = surrounding_polygon(outline, margin, 120);
  const auto [area, perimeter] = size_of(body);
  // n' = 2/sqrt(3) A/s^2 + P/(2 s) + 1, solved for 1/s.
  const double a = 2.0 / std::sqrt(3.0) * area, b = perimeter / 2.0;
  const double count = static_cast<double>(n);
  const double c = (1.0 + bound_over_count / std::sqrt(count)) * count - 1.0;
  return (b + std::sqrt(b * b + 4.0 * a * c)) / (2.0 * c);
}

}  // namespace

StandardPlaces standard_places(const Standard& standard, std::size_t n, double least, long work) {
  const Outline outline{standard.section};
  double wanted = hopeful_spacing(outline, standard.margin, n);
  StandardPlaces best;
  const long end = work / stages;
  for (int stage = 0; work > 0 && n > 1; ++stage) {
    const Discs discs = equal_discs(n, wanted, standard.margin);
    LayoutSearch search{outline, discs, 1e-14 * wanted * wanted,
                        0x5eed + n + static_cast<std::size_t>(stage)};
    if (best.points.empty() || !search.try_start(to_coordinates(best.points))) {
      search.run(std::min(end, work));
    }
    work -= std::max(1L, search.work());
    const double spacing = wanted + search.touching();
    if (spacing > best.spacing) best = {to_points(search.layout()), spacing};
    const bool with_ease = n <= few_places && search.touching() >= 0.0;
    if (!with_ease && best.spacing < (1.0 - still_to_gain) * least) break;
    wanted = best.spacing * (1.0 + (with_ease ? much_wider_by : wider_by));
  }
  return best;
}

}  // namespace bulbwright::packing
