#include "catalogue/pest.hpp"

namespace bulbwright {

std::string_view plural_of(Pest pest) {
  constexpr auto plurals =
      words_to<Pest::deer>("gophers", "voles", "mice", "squirrels", "chipmunks", "deer");
  return plurals[static_cast<std::size_t>(pest)];
}

Eaten eaten_by(const Taxon& taxon, Pest pest) {
  switch (pest) {
    case Pest::gopher:
      return taxon.gopher;
    case Pest::vole:
    case Pest::mouse:
      return taxon.vole;
    case Pest::squirrel:
    case Pest::chipmunk:
      return taxon.squirrel;
    case Pest::deer:
      return taxon.deer;
  }
  return Eaten::unknown;
}

}  // namespace bulbwright
