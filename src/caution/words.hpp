#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "caution/caution.hpp"

namespace bulbwright {

/// Placeholders that the texts of a caution list may hold, with their braces.
std::span<const std::string_view> caution_placeholders();

/// "tulips", "tulips and daffodils", "tulips, daffodils and squills": the genera of `taxa` in their
/// order, each once.
std::string kinds_of(std::span<const Taxon* const> taxa);

/// As kinds_of(), but "all kinds here" or "most kinds here" (of `of`) where the list is longer than
/// `width` columns.
std::string kinds_within(std::span<const Taxon* const> taxa, std::span<const Taxon* const> of,
                         std::size_t width);

/// "eat Triumph tulip; sometimes eat Hyacinth; seldom eat Trumpet daffodil, ...": what an animal
/// makes of each taxon, by name.
std::string eats(std::span<const Taxon* const> taxa, Pest pest);

/// The same for the bench in at most `width` columns: "eat tulips and crocus: mesh the pot, no
/// baits".
std::string eats_short(std::span<const Taxon* const> taxa, Pest pest, std::size_t width);

/// "gophers", "gophers and mice": the animals in their plural.
std::string pests_of(std::span<const Pest> pests);

}  // namespace bulbwright
