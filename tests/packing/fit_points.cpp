#include "packing/fit_points.hpp"

#include "packing/answer.hpp"
#include "packing/bounds.hpp"
#include "packing/certificate.hpp"
#include "packing/choices.hpp"
#include "packing/layout_search.hpp"
#include "packing/seeds.hpp"

namespace bulbwright {
namespace {

using packing::Discs;
using packing::Outline;
using packing::Point;

constexpr double certified_to = 1e-9;  ///< of the spacing

/// An energy below this keeps every overlap under certified_to.
double fits_below(double spacing) {
  return 0.8 * certified_to * certified_to * spacing * spacing;
}

}  // namespace

std::vector<Point> fixture::fit_points(const Section& section, std::size_t n, Millimetres spacing,
                                       Millimetres margin, Effort effort) {
  const Outline outline{section};
  const double s = spacing.value(), m = margin.value();
  if (n == 0 || n > packing::most_points(outline, s, m).most) return {};
  const Discs discs = packing::equal_discs(n, s, m);
  packing::LayoutSearch search{outline, discs, fits_below(s), 0x5eed + n};
  // One count and no rounding: half as much again keeps to the times named.
  if (!search.run(packing::work_of(effort) * 3 / 2)) return {};
  if (packing::violation(outline, discs, search.layout()) > certified_to) return {};
  return packing::to_points(search.layout());
}

}  // namespace bulbwright
