#pragma once

#include "base/enum_words.hpp"
#include "catalogue/taxon.hpp"

namespace bulbwright {

/// Animals that the catalogue or the mesh table (materials/mesh.hpp) says something about.
enum class Pest { gopher, vole, mouse, squirrel, chipmunk, deer };
constexpr auto enum_words(Pest) {
  return words_to<Pest::deer>("gopher", "vole", "mouse", "squirrel", "chipmunk", "deer");
}

/// Several of them, for sentences: "gophers", "mice", "deer".
std::string_view plural_of(Pest pest);

/// What the catalogue says an animal makes of a taxon. Mice are taken as voles, chipmunks as
/// squirrels (common practice). `unknown` where there is no figure.
Eaten eaten_by(const Taxon& taxon, Pest pest);

}  // namespace bulbwright
