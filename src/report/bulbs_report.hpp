#pragma once

#include <span>
#include <string>

#include "catalogue/taxon.hpp"
#include "report/asked_flags.hpp"
#include "report/text_style.hpp"

namespace bulbwright::report {

/// Taxa as the JSON document "bulbwright.bulbs/1" (docs/schema/bulbs.schema.json): every figure
/// with value, range, unit, origin and source. `words`: ids or names asked for, none for all;
/// `flags`: by which they were picked, as written.
std::string bulbs_json(std::span<const Taxon* const> taxa, std::span<const std::string> words,
                       const AskedFlags& flags);

/// The same as CSV, in the form of the data file: a part of it, edited, can be given back by
/// --data. Lines end as RFC 4180 says.
std::string bulbs_csv(std::span<const Taxon* const> taxa);

/// One line a taxon: id, name, planting depth, cold and when it flowers.
std::string bulbs_list_text(std::span<const Taxon* const> taxa, const TextStyle& style);

/// All that is known of one taxon, by subject, the sources numbered and listed below.
std::string taxon_text(const Taxon& taxon, const TextStyle& style);

}  // namespace bulbwright::report
