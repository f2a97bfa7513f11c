#pragma once

#include <bitset>
#include <string_view>
#include <vector>

#include "base/csv.hpp"
#include "base/error.hpp"
#include "catalogue/taxon.hpp"

namespace bulbwright {

constexpr std::size_t most_rules = 64;  ///< at least quantity_rules().size()

/// A taxon while its rows come in.
struct Draft {
  Taxon taxon;
  std::bitset<most_rules> given;  ///< has the quantity
  std::bitset<most_rules> fresh;  ///< got it from the file now being read
  SourcePlace first;              ///< where it first stands

  /// The row of that quantity, or nullptr.
  TaxonFact* fact(std::string_view quantity);
};

/// Puts the rows of one catalogue file into the drafts (known taxa changed, new ones appended) and
/// returns every fault of a single row, in order of lines. Moves the fields out of `table`.
std::vector<InputFault> read_rows(CsvTable& table, std::vector<Draft>& drafts);

}  // namespace bulbwright
