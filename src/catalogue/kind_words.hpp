#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "catalogue/catalogue.hpp"

namespace bulbwright {

/// The kinds that a grower's words mean, in the order of the catalogue: an id alone; else those
/// with that very name (in one or several, any case, with hyphens or without: "Grape hyacinths");
/// else those of that genus, by its English or its botanical name ("daffodil", "Tulipa"); else
/// those with every word in their names or their genus's; else those with a name of which every
/// word begins with one of these ("daff", "tul tri"; three letters at least). None: nothing is
/// called so.
std::vector<const Taxon*> kinds_called(const Catalogue& catalogue, std::string_view words);

/// The one kind that they mean.
/// @throws InvalidValue (empty field) naming those that the words fit, where there are several, or
/// the near miss of a name that nothing has.
const Taxon& kind_called(const Catalogue& catalogue, std::string_view words);

}  // namespace bulbwright
