#pragma once

#include <string>
#include <vector>

#include "catalogue/catalogue.hpp"
#include "caution/caution.hpp"
#include "climate/place.hpp"
#include "climate/place_season.hpp"
#include "flowering/bloom_parameters.hpp"
#include "input/faults.hpp"
#include "input/input_files.hpp"
#include "input/located_request.hpp"
#include "plan/context.hpp"
#include "shopping/pack_sizes.hpp"

namespace bulbwright::input {

/// The facts that requests are resolved against: built in, with those of --data laid over them.
struct Facts {
  Catalogue catalogue;
  BloomTable blooms;
  PlaceCatalogue places;
  std::vector<CautionRule> cautions;
  std::vector<PackSizes> packs;
};

/// Built-in facts; with a folder, its taxa.csv, genera.csv, places.csv, bloom.csv, cautions.csv and
/// packs.csv add to them or override them. The files read are noted in `inputs`, here and below.
/// @throws InputError for a folder or a file in it that cannot be read or has faults, for a folder
/// with none of them, and for another CSV file in it or one with nearly their names, which would
/// otherwise be passed over in silence.
Facts load_facts(const std::string& data_folder, InputFiles& inputs);

/// The places alone, for commands that need no taxa.
/// @throws InputError as load_facts.
PlaceCatalogue load_places(const std::string& data_folder, InputFiles& inputs);

/// The place and season of a request, its dates checked and its kinds settled: their ids stand in
/// the place of the names that were written; days without a year get that of the season.
/// @throws InputError with the faults found so far and every further one, each at its field.
PlaceSeason resolve(LocatedRequest& asked, const Facts& facts, InputFiles& inputs,
                    Faults faults = {});

/// What a plan is made from; everything given must outlive it.
PlanContext context_of(const Facts& facts, const PlaceSeason& place_season, Effort effort,
                       PackingCache& packings);

}  // namespace bulbwright::input
