#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "catalogue/taxon.hpp"

namespace bulbwright {

/// A contradiction between two figures of one taxon: the quantity to change and what is wrong.
struct Contradiction {
  std::string_view quantity;
  std::string message;
};

/// Laws that the figures of a complete taxon keep. Each is a definition, not an opinion:
/// - a kind that is not dry_ok has no weeks of dry cold, no refrigerated weeks and no refrigerator
///   temperature; a dry_ok kind has a refrigerator temperature;
/// - weeks in the refrigerator for any reason are never fewer than the weeks of dry cold (value,
///   low and high);
/// - printed dry pre-chilling stays within the weeks of dry cold, and has its temperature;
/// - the least planting depth leaves the smallest traded bulb under the surface;
/// - bulbs at the least container spacing do not overlap at the usual grade;
/// - the least hardiness zone is not above the warmest zone for unchilled bulbs.
std::vector<Contradiction> contradictions(const Taxon& taxon);

}  // namespace bulbwright
