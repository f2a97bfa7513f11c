#pragma once

#include <optional>
#include <vector>

#include "catalogue/catalogue.hpp"
#include "input/located_request.hpp"

namespace bulbwright::input {

/// Checks that need more than one field of a request, or facts from the catalogue. Messages name
/// the field as it was written: "layers[1].taxon" with its line in a file, "--layer" for a flag.

/// What contradicts itself, in no order: a pot that cannot be (as make_pot() tells), top beside
/// profile, more than one kind of place, both plant and flower, a latitude or hemisphere that does
/// not go with the kind of place, and, where the hemisphere is known, a season that plant or flower
/// is not in. Empty where all is well. A pot that is not sound is left alone.
std::vector<InputFault> contradictions(const LocatedRequest& asked);

/// What a plan cannot do without and the request leaves out: the rim (or a profile), the place
/// and its kind, the latitude of normals or records, the layers (unless they are what is sought).
/// Nothing where the request is not sound: a missing key may just be misspelt.
enum class Layers { needed, sought };
std::vector<InputFault> omissions(const LocatedRequest& asked, Layers layers = Layers::needed);

/// Where the request itself tells it: `south` of a zone, or the sign of the latitude. Nothing for a
/// site, which only the catalogue knows.
std::optional<Hemisphere> hemisphere_of(const PlaceRequest& place);

/// plant or flower that does not lie in `season`, or a flowering window in two seasons. Where
/// hemisphere_of() tells the hemisphere, contradictions() has them already.
std::vector<InputFault> season_faults(const LocatedRequest& asked, Hemisphere hemisphere);

/// Puts the id of the kind that is meant (kind_called()) in the place of every name in the layers.
/// What means no kind, several, or one that its mix has already is told at its place.
std::vector<InputFault> settle_kinds(LocatedRequest& asked, const Catalogue& catalogue);

}  // namespace bulbwright::input
