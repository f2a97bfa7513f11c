#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "catalogue/taxon.hpp"

namespace bulbwright {

/// The trade groups the program knows, in the order of the file. Every taxon in it is complete:
/// each required quantity is there, within its possible range, and low <= value <= high.
class Catalogue {
 public:
  Catalogue() = default;
  /// Gives each taxon the facts of its genus.
  Catalogue(std::vector<Taxon> taxa, Genera genera);

  [[nodiscard]] const Genera& genera() const { return genera_; }

  /// Lives as long as the catalogue, hence not of a temporary one.
  [[nodiscard]] std::span<const Taxon> taxa() const& { return taxa_; }
  std::span<const Taxon> taxa() const&& = delete;

  /// The taxon of that id, or nullptr. The pointer lives as long as the catalogue.
  [[nodiscard]] const Taxon* find(std::string_view id) const;

  /// As find(). @throws InvalidValue (empty field) naming the unknown id and its near miss.
  [[nodiscard]] const Taxon& at(std::string_view id) const;

  /// All ids in the order of the file, for did_you_mean(). They live as long as the catalogue.
  [[nodiscard]] std::vector<std::string_view> ids() const;

 private:
  std::vector<Taxon> taxa_;
  Genera genera_;
};

/// Reads a whole catalogue: CSV with the header taxon,quantity,value,low,high,unit,origin,source
/// (columns in any order), one row per taxon and quantity; meaning of the quantities in
/// data/SOURCES.md. Taxa stand in the order of their first row.
/// @throws InputError with every fault found, in order of lines: unknown quantity, unit, word or
/// origin (with near miss), number malformed or out of its possible range, low > value or
/// value > high, a published figure without a source, a figure given twice, a required quantity
/// missing, two figures of a taxon that contradict each other (a kind that is never refrigerated
/// with weeks in the refrigerator, pre-chilling past the dry-cold limit, a depth that leaves the
/// bulb above the surface, ...).
Catalogue parse_catalogue(std::string_view csv, std::string file, Genera genera = {});

/// `base` with the rows of `csv` put in: a row for a known taxon and quantity replaces that figure
/// alone, other rows add to the taxon, an unknown taxon is a new one after the others and must be
/// complete. Messages name the file of the row at fault.
/// The genera are those of `base`.
/// @throws InputError as parse_catalogue(), the checks made on the merged taxa.
Catalogue merged(const Catalogue& base, std::string_view csv, std::string file);

/// The catalogue compiled into the program (data/taxa.csv, data/genera.csv), parsed at each call.
Catalogue builtin_catalogue();

}  // namespace bulbwright
