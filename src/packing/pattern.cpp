#include "packing/pattern.hpp"

#include <cmath>

#include "packing/answer.hpp"
#include "packing/rings.hpp"
#include "packing/seeds.hpp"

namespace bulbwright {
namespace {

using packing::GridPoint;
using packing::Outline;
using packing::PlaceSets;

/// Places are tried as they are, and with so much to spare that rounding breaks nothing, mm.
constexpr double spares[] = {0.0, 0.03};

std::vector<GridPoint> rounded_places(const PlaceSets& sets) {
  std::vector<GridPoint> grid;
  for (const auto& set : sets) {
    for (const packing::Point p : set) {
      grid.push_back(
          {std::lround(packing::units_per_mm * p.x), std::lround(packing::units_per_mm * p.y)});
    }
  }
  return grid;
}

packing::Coordinates fine_places(const PlaceSets& sets) {
  std::vector<packing::Point> places;
  for (const auto& set : sets) places.insert(places.end(), set.begin(), set.end());
  return packing::finely_rounded(packing::to_coordinates(places));
}

}  // namespace

PatternLayout lay_pattern(const Section& section, const PackKind& kind, Millimetres gap,
                          Millimetres wall, Pattern pattern) {
  const Outline outline{section};
  const double spacing = kind.diameter.value() + gap.value();
  const double margin = wall.value() + kind.diameter.value() / 2.0;
  PlaceSets best;
  bool finely = false;
  PatternLayout layout;
  // In hundredths, and where nothing can move in millionths.
  const auto offer = [&](const PlaceSets& sets, bool upright, bool in_millionths) {
    const std::size_t n = packing::places_in(sets);
    if (n <= packing::places_in(best)) return;
    const packing::KindDiscs bulbs = packing::discs_of({&kind, 1}, {n}, gap.value(), wall.value());
    if (in_millionths ? !packing::holds_finely(outline, bulbs.discs, fine_places(sets))
                      : !packing::Certifier{outline, bulbs.discs}.holds(rounded_places(sets)))
      return;
    best = sets;
    finely = in_millionths;
    layout.upright = upright;
  };
  const auto offer_all = [&](double spare, bool in_millionths) {
    const double s = spacing + spare, m = margin + spare / 2.0;
    if (pattern == Pattern::rings) {
      offer(packing::fullest_rings(outline, s, m), false, in_millionths);
      return;
    }
    for (const bool upright : {false, true}) {
      offer(packing::fullest_rows(outline, s, m, upright), upright, in_millionths);
    }
  };
  for (const double spare : spares) offer_all(spare, false);
  offer_all(0.0, true);
  const packing::KindDiscs bulbs =
      packing::discs_of({&kind, 1}, {packing::places_in(best)}, gap.value(), wall.value());
  layout.packing = finely ? packing::packing_of(outline, bulbs, fine_places(best), {&kind, 1},
                                                gap.value(), wall.value())
                          : packing::packing_of(outline, bulbs, rounded_places(best), {&kind, 1},
                                                gap.value(), wall.value());
  const CountBound bound = upper_bound(section, {&kind, 1}, gap, wall);
  layout.packing.upper_bound = bound.most;
  layout.packing.bound_name = bound.name;
  for (const auto& set : best) layout.sets.push_back(static_cast<int>(set.size()));
  return layout;
}

}  // namespace bulbwright
