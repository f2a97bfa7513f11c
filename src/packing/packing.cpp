// The questions of packing.hpp that others answer: which search, which bound.
#include "packing/packing.hpp"

#include <utility>

#include "packing/answer.hpp"
#include "packing/bounds.hpp"
#include "packing/choices.hpp"
#include "packing/lattice.hpp"
#include "packing/most.hpp"

namespace bulbwright {

using packing::Outline;

Packing pack_most(const Section& section, std::span<const PackKind> kinds, Millimetres gap,
                  Millimetres wall, Effort effort, Arrange arrange) {
  const Outline outline{section};
  if (kinds.size() == 1)
    return packing::most_of_one(outline, kinds.front(), gap.value(), wall.value(), effort);
  return packing::most_of_mixture(outline, kinds, gap.value(), wall.value(), effort, arrange);
}

CountBound upper_bound(const Section& section, Millimetres spacing, Millimetres margin) {
  packing::Bound bound = packing::most_points(Outline{section}, spacing.value(), margin.value());
  return {bound.most, std::move(bound.name)};
}

CountBound upper_bound(const Section& section, std::span<const PackKind> kinds, Millimetres gap,
                       Millimetres wall) {
  packing::Bound bound = packing::bound_of(Outline{section}, kinds, gap.value(), wall.value());
  return {bound.most, std::move(bound.name)};
}

std::size_t lattice_count(const Section& section, Millimetres spacing, Millimetres margin) {
  return packing::best_lattice(packing::Outline{section}, spacing.value(), margin.value()).size();
}

}  // namespace bulbwright
