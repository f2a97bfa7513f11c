#pragma once

#include <optional>
#include <vector>

#include "base/enum_words.hpp"
#include "catalogue/pest.hpp"
#include "catalogue/taxon.hpp"

namespace bulbwright {

/// Cold that a kind is asked to need, or to take. none: its least cold outdoors is none, so that it
/// flowers in a winter without any; dry_ok and moist_only: in that form.
enum class ColdWish { none, dry_ok, moist_only };
constexpr auto enum_words(ColdWish) {
  return words_to<ColdWish::moist_only>("none", "dry-ok", "moist-only");
}

/// Wishes by which kinds are picked from the catalogue. All must hold.
struct KindFilter {
  std::optional<ColdWish> cold;
  std::vector<Pest> eaten_by;                            ///< eaten, or occasionally
  std::vector<Pest> not_eaten_by;                        ///< rarely eaten; unknown counts as eaten
  std::optional<Millimetres> least_height, most_height;  ///< of its usual height in flower

  [[nodiscard]] bool is_open() const;  ///< nothing is wished
};

bool passes(const Taxon& taxon, const KindFilter& filter);

}  // namespace bulbwright
