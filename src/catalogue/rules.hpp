#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>

#include "catalogue/taxon.hpp"

namespace bulbwright {

/// Where a quantity of the file goes in a Taxon; the type of the member is the form of the value.
using QuantityTarget =
    std::variant<Figure Taxon::*, std::optional<Figure> Taxon::*, int Taxon::*,
                 std::string Taxon::*, ColdForm Taxon::*, RootingStart Taxon::*, Eaten Taxon::*,
                 Toxicity Taxon::*, Light Taxon::*, Moisture Taxon::*, FoliageDensity Taxon::*,
                 AfterFlowering Taxon::*, PlantBy Taxon::*>;

/// What the catalogue knows of one quantity: its name, unit and possible range, and whether every
/// taxon must have it.
struct QuantityRule {
  std::string_view name;
  std::string_view unit;  ///< empty for words
  double least = 0.0;     ///< of numbers: value, low and high
  double most = 0.0;
  bool required = true;
  QuantityTarget target;
};

/// All quantities, in the order in which missing ones are reported.
std::span<const QuantityRule> quantity_rules();

/// Index into quantity_rules(), or npos of the span's size when unknown.
std::size_t quantity_index(std::string_view name);

}  // namespace bulbwright
