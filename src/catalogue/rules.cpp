#include "catalogue/rules.hpp"

#include <algorithm>
#include <array>

namespace bulbwright {
namespace {

// The ranges are wide: they catch a slip of the unit or the decimal point, not an odd opinion.
constexpr std::array rules{
    QuantityRule{"name", "", 0, 0, true, &Taxon::name},
    QuantityRule{"genus", "", 0, 0, true, &Taxon::genus},
    QuantityRule{"other_names", "", 0, 0, false, &Taxon::other_names},
    QuantityRule{"bulb_circumference", "cm", 1, 60, true, &Taxon::circumference_cm},
    QuantityRule{"bulb_height_to_diameter", "ratio", 0.2, 3, true, &Taxon::height_to_diameter},
    QuantityRule{"depth_to_base", "mm", 10, 600, true, &Taxon::depth_mm},
    QuantityRule{"depth_ground", "mm", 10, 600, false, &Taxon::depth_ground_mm},
    QuantityRule{"spacing_ground", "mm", 10, 1000, true, &Taxon::spacing_ground_mm},
    QuantityRule{"container_spacing", "mm", 10, 600, true, &Taxon::spacing_mm},
    QuantityRule{"bulbs_per_15cm_pot", "bulbs", 1, 60, false, &Taxon::per_15cm_pot},
    QuantityRule{"cold_weeks", "weeks", 0, 30, true, &Taxon::cold_weeks},
    QuantityRule{"outdoor_cold_weeks", "weeks", 0, 30, true, &Taxon::outdoor_cold_weeks},
    QuantityRule{"cold_form", "", 0, 0, true, &Taxon::cold_form},
    QuantityRule{"dry_cold_max_weeks", "weeks", 0, 30, true, &Taxon::dry_cold_max_weeks},
    QuantityRule{"max_refrigerated_weeks", "weeks", 0, 52, true, &Taxon::max_refrigerated_weeks},
    QuantityRule{"refrigerator_temp", "degC", 0, 15, false, &Taxon::refrigerator_temp_c},
    QuantityRule{"prechill_dry_weeks", "weeks", 0, 30, false, &Taxon::prechill_dry_weeks},
    QuantityRule{"prechill_temp", "degC", 0, 15, false, &Taxon::prechill_temp_c},
    QuantityRule{"storage_temp", "degC", 0, 40, true, &Taxon::storage_temp_c},
    QuantityRule{"max_dry_storage_weeks", "weeks", 0, 104, true, &Taxon::max_dry_storage_weeks},
    QuantityRule{"storage_medium", "", 0, 0, true, &Taxon::storage_medium},
    QuantityRule{"plant_soil_max", "degC", 0, 35, true, &Taxon::soil_max_c},
    QuantityRule{"rooting_start", "", 0, 0, true, &Taxon::rooting_start},
    QuantityRule{"plant_by", "", 0, 0, true, &Taxon::plant_by},
    QuantityRule{"soak_hours", "hours", 0, 48, true, &Taxon::soak_hours},
    QuantityRule{"weeks_to_flower_forcing", "weeks", 0, 40, true, &Taxon::weeks_to_flower_forcing},
    QuantityRule{"bloom_season_order", "class", 1, 8, true, &Taxon::season_class},
    QuantityRule{"bloom_month_mid_temperate", "", 0, 0, true, &Taxon::bloom_months},
    QuantityRule{"flower_length", "days", 1, 120, true, &Taxon::flower_days},
    QuantityRule{"height", "cm", 2, 250, true, &Taxon::height_cm},
    QuantityRule{"foliage_height", "cm", 1, 250, true, &Taxon::foliage_height_cm},
    QuantityRule{"foliage_density", "", 0, 0, true, &Taxon::foliage_density},
    QuantityRule{"light", "", 0, 0, true, &Taxon::light},
    QuantityRule{"moisture_growth", "", 0, 0, true, &Taxon::moisture_growth},
    QuantityRule{"moisture_rest", "", 0, 0, true, &Taxon::moisture_rest},
    QuantityRule{"after", "", 0, 0, true, &Taxon::after},
    QuantityRule{"after_cold_winter", "", 0, 0, false, &Taxon::after_cold_winter},
    QuantityRule{"hardiness_min_zone", "USDA zone", 1, 13, true, &Taxon::hardiness_min_zone},
    QuantityRule{"hardiness_max_zone_without_prechill", "USDA zone", 1, 13, true,
                 &Taxon::max_zone_without_prechill},
    QuantityRule{"frost_lethal_temp", "degC", -40, 0, false, &Taxon::frost_lethal_c},
    QuantityRule{"deer", "", 0, 0, false, &Taxon::deer},
    QuantityRule{"gopher", "", 0, 0, false, &Taxon::gopher},
    QuantityRule{"squirrel", "", 0, 0, false, &Taxon::squirrel},
    QuantityRule{"vole", "", 0, 0, false, &Taxon::vole},
    QuantityRule{"toxicity", "", 0, 0, true, &Taxon::toxicity},
    QuantityRule{"skin", "", 0, 0, true, &Taxon::skin},
    QuantityRule{"toxicity_cat", "", 0, 0, false, &Taxon::toxicity_cat},
    QuantityRule{"toxicity_dog", "", 0, 0, false, &Taxon::toxicity_dog},
    QuantityRule{"toxicity_horse", "", 0, 0, false, &Taxon::toxicity_horse},
    QuantityRule{"toxicity_people", "", 0, 0, false, &Taxon::toxicity_people},
};

}  // namespace

std::span<const QuantityRule> quantity_rules() {
  return rules;
}

std::size_t quantity_index(std::string_view name) {
  const auto found = std::find_if(rules.begin(), rules.end(),
                                  [&](const QuantityRule& rule) { return rule.name == name; });
  return static_cast<std::size_t>(found - rules.begin());
}

}  // namespace bulbwright
