#pragma once

#include "catalogue/taxon.hpp"

namespace bulbwright {

/// What happened to bulbs before their flowers were dated: planted or rooted before a winter that
/// gave their cold; refrigerated for a week or more and planted dry; cooled in the pot and brought
/// indoors; planted with their noses up.
enum class Treatment { natural, refrigerated, forced, in_growth };

/// True where published dates of the kind's genus so treated are known: those that the model was
/// fitted to and judged by. Source: tests/vectors (garden_dates, bloom_dates, prechilled_dates,
/// bloom_forcing); a test keeps the two alike.
bool ever_observed(const Taxon& taxon, Treatment treatment);

}  // namespace bulbwright
