#include "flowering/observed.hpp"

#include <algorithm>
#include <array>
#include <span>
#include <string_view>

namespace bulbwright {
namespace {

constexpr std::array<std::string_view, 20> planted_before_winter{
    "Allium",    "Anemone", "Camassia",   "Chionodoxa", "Crocus",   "Freesia",  "Fritillaria",
    "Galanthus", "Ipheion", "Hyacinthus", "Iris",       "Ixia",     "Leucojum", "Muscari",
    "Narcissus", "Scilla",  "Puschkinia", "Ranunculus", "Sparaxis", "Tulipa"};
constexpr std::array<std::string_view, 2> refrigerated{"Narcissus", "Tulipa"};
constexpr std::array<std::string_view, 4> forced{"Crocus", "Hyacinthus", "Narcissus", "Tulipa"};

/// Newcomers to dated genera.
constexpr std::array<std::string_view, 5> never_dated{
    "anemone-coronaria", "leucojum-vernum", "narcissus-bulbocodium", "narcissus-tazetta-early",
    "scilla-peruviana"};

std::span<const std::string_view> genera_dated(Treatment treatment) {
  switch (treatment) {
    case Treatment::natural:
      return planted_before_winter;
    case Treatment::refrigerated:
      return refrigerated;
    case Treatment::forced:
      return forced;
    case Treatment::in_growth:
      break;
  }
  return {};
}

}  // namespace

bool ever_observed(const Taxon& taxon, Treatment treatment) {
  if (std::ranges::find(never_dated, std::string_view{taxon.id}) != never_dated.end()) return false;
  const auto genera = genera_dated(treatment);
  return std::ranges::find(genera, std::string_view{taxon.genus}) != genera.end();
}

}  // namespace bulbwright
