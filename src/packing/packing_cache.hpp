#pragma once

#include <map>
#include <span>
#include <vector>

#include "packing/choices.hpp"
#include "packing/packing.hpp"

namespace bulbwright {

/// Remembers packings, so that a second pot with the same section and bulbs costs nothing. Belongs
/// to the caller, who makes one for a run; answers are those of pack_most() and place_count().
class PackingCache {
 public:
  const Packing& most(const Section& section, std::span<const PackKind> kinds, Millimetres gap,
                      Millimetres wall, Effort effort, Arrange arrange);
  const Packing& count(const Section& section, std::span<const PackKind> kinds,
                       Millimetres least_gap, Millimetres wall, Effort effort, Arrange arrange);

 private:
  std::map<std::vector<double>, Packing> known_;
};

}  // namespace bulbwright
