#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/calendar_day.hpp"
#include "base/enum_words.hpp"
#include "base/origin.hpp"
#include "base/quantity.hpp"
#include "catalogue/genera.hpp"

namespace bulbwright {

/// A figure with its range. A single value has low = high = value.
struct Figure {
  double value = 0.0;
  double low = 0.0;
  double high = 0.0;
};

/// One row of the catalogue as written, for people and for checking.
struct TaxonFact {
  std::string quantity;
  std::string value, low, high, unit;
  Origin origin = Origin::from_memory;
  std::string source;  ///< in words; never empty where the origin is published
  std::string file;    ///< where the row stands, for messages
  int line = 0;
};

/// What dry bulbs of a kind can take. dry_ok: refrigerated dry; moist_only: fleshy, potted at once
/// and chilled in the pot; none: never refrigerated.
enum class ColdForm { dry_ok, moist_only, none };
constexpr auto enum_words(ColdForm) {
  return words_to<ColdForm::none>("dry-ok", "moist-only", "none");
}

enum class RootingStart { early, normal, late };
constexpr auto enum_words(RootingStart) {
  return words_to<RootingStart::late>("early", "normal", "late");
}

/// What an animal makes of it; unknown is what an absent row means, and is not written.
enum class Eaten { eaten, occasionally, rarely, unknown };
constexpr auto enum_words(Eaten) {
  return words_to<Eaten::unknown>("eaten", "occasionally eaten", "rarely eaten", "unknown");
}

/// Of an eaten bulb. unverified is treated as poisonous; none_known is not "safe".
enum class Toxicity { none_known, mild, moderate, severe, unverified };
constexpr auto enum_words(Toxicity) {
  return words_to<Toxicity::unverified>("none known", "mild", "moderate", "severe", "unverified");
}

enum class Light { sun, sun_to_part_shade, part_shade };
constexpr auto enum_words(Light) {
  return words_to<Light::part_shade>("sun", "sun to part shade", "part shade");
}

enum class Moisture { dry, normal, moist };
constexpr auto enum_words(Moisture) {
  return words_to<Moisture::moist>("dry", "normal", "moist");
}

enum class FoliageDensity { sparse, normal, mat };
constexpr auto enum_words(FoliageDensity) {
  return words_to<FoliageDensity::mat>("sparse", "normal", "mat");
}

enum class AfterFlowering { discard, keep, dry_off };
constexpr auto enum_words(AfterFlowering) {
  return words_to<AfterFlowering::dry_off>("discard", "keep", "dry off");
}

/// Months are those of the north; add six in the south.
enum class PlantBy {
  on_arrival,
  october_november,
  november_december_after_cold,
  december_january_after_cold
};
constexpr auto enum_words(PlantBy) {
  return words_to<PlantBy::december_january_after_cold>("on arrival", "October-November",
                                                        "November-December after cold",
                                                        "December-January after cold");
}

/// A catalogue entry: a species or trade group. Meaning of each figure: data/SOURCES.md.
struct Taxon {
  std::string id;    ///< "tulip-triumph"
  std::string name;  ///< "Triumph tulip"
  std::string genus;
  Genus genus_facts;        ///< of genus; filled in by the catalogue
  std::string other_names;  ///< that growers use beside name and genus, "|" between

  Figure circumference_cm;                ///< traded grade
  Figure height_to_diameter;              ///< bulb height without shoot / largest diameter
  Figure depth_mm;                        ///< mix surface to bulb base: wish, least, most
  Figure spacing_mm;                      ///< container_spacing, centre to centre
  Figure spacing_ground_mm;               ///< in beds, centre to centre
  std::optional<Figure> depth_ground_mm;  ///< in open ground, as the source prints it
  std::optional<Figure> per_15cm_pot;
  Figure cold_weeks;          ///< forcing indoors: recommended, least, most
  Figure outdoor_cold_weeks;  ///< outdoors in a pot: plan for, least, enough
  ColdForm cold_form = ColdForm::dry_ok;
  Figure dry_cold_max_weeks;
  Figure max_refrigerated_weeks;
  std::optional<Figure> refrigerator_temp_c;  ///< setting, tolerated limits; dry_ok kinds only
  std::optional<Figure> prechill_dry_weeks;   ///< printed advice for mild winters
  std::optional<Figure> prechill_temp_c;
  Figure storage_temp_c;
  Figure max_dry_storage_weeks;
  std::string storage_medium;
  Figure soil_max_c;  ///< plant_soil_max: value plant at or below, high wait above
  RootingStart rooting_start = RootingStart::normal;
  PlantBy plant_by = PlantBy::october_november;
  Figure soak_hours;
  Figure weeks_to_flower_forcing;
  int season_class = 0;      ///< bloom_season_order 1 to 8, tie-break only
  std::string bloom_months;  ///< in zones 6 and 7, in words
  Figure flower_days;
  Figure height_cm;
  Figure foliage_height_cm;
  FoliageDensity foliage_density = FoliageDensity::normal;
  Light light = Light::sun;
  Moisture moisture_growth = Moisture::normal;
  Moisture moisture_rest = Moisture::normal;
  AfterFlowering after = AfterFlowering::keep;  ///< after a mild winter and a hot summer
  /// Where the winter gives the cold and bulbs last, of kinds that are else discarded.
  AfterFlowering after_cold_winter = AfterFlowering::discard;
  int hardiness_min_zone = 0;
  std::optional<Figure> frost_lethal_c;  ///< of the mix: rooted bulbs begin to die, all are dead
  int max_zone_without_prechill = 0;
  Eaten deer = Eaten::unknown, gopher = Eaten::unknown, squirrel = Eaten::unknown,
        vole = Eaten::unknown;
  Toxicity toxicity_cat = Toxicity::unverified, toxicity_dog = Toxicity::unverified,
           toxicity_horse = Toxicity::unverified, toxicity_people = Toxicity::unverified;
  std::string toxicity;  ///< in words
  std::string skin;      ///< in words

  std::vector<TaxonFact> facts;  ///< every row, in the order of the file
};

/// A kind's name without what stands in brackets or after a comma: "Large Dutch crocus" of "Large
/// Dutch crocus (Crocus vernus)". For sentences.
std::string plain_name(std::string_view name);

/// Diameter of a bulb of circumference c: c / pi (a circle).
Millimetres diameter_of_circumference(double circumference_cm);

}  // namespace bulbwright
