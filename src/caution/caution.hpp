#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/quantity.hpp"
#include "catalogue/pest.hpp"
#include "catalogue/taxon.hpp"

namespace bulbwright {

/// Columns of a line on the bench sheet.
inline constexpr std::size_t sheet_width = 90;

/// high: people or animals may come to serious harm; medium: harm to health, the pot or the bulbs;
/// low: a rule to look up, a mix-up to avoid.
enum class CautionSeverity { high, medium, low };
constexpr auto enum_words(CautionSeverity) {
  return words_to<CautionSeverity::low>("high", "medium", "low");
}

/// What is in a plan, as far as cautions depend on it. The taxa belong to the caller's catalogue.
struct CautionFacts {
  std::vector<const Taxon*> taxa;  ///< every kind in the plan, once or more
  bool stored = true;              ///< bulbs wait between delivery and planting
  bool refrigerated = false;       ///< some of them in a refrigerator
  bool pre_cooled = false;         ///< some came with cold weeks already given
  std::string storage_method;      ///< as given: "paper bag", "damp vermiculite"
  bool frost_expected = false;     ///< the mix or the air freezes in a cold winter of the place
  bool mild_winter = false;        ///< tender kinds live through it outdoors
  bool cracks_in_frost = false;    ///< the pot's material
  bool wall_pot = false;           ///< half-round, to be hung
  bool mesh = false;               ///< wire mesh is cut
  double perlite_share = 0.0;      ///< of the mix by volume, 0 to 1
  Kilograms filled_weight;         ///< 0: not known
  Kilograms lift_one;              ///< lifting guideline for one person
  Litres volume;                   ///< of the pot
  std::vector<Pest> pests;
};

/// A caution that a plan calls for, in words ready to print.
struct Caution {
  std::string code;  ///< stable, for programs
  CautionSeverity severity = CautionSeverity::medium;
  std::string topic;   ///< "poison", "lift": cautions of one topic share a line on the sheet
                       ///< (pests: those that eat the same)
  std::string hazard;  ///< what can go wrong
  std::string advice;  ///< what to do
  std::string text;    ///< hazard and advice as sentences
  std::string
      short_text;  ///< one line of at most sheet_width columns for the bench sheet; empty where the
                   ///< topic has no line there or another caution has already said it
  Kilograms weight;  ///< of the filled pot, for {weight} in short_text, which is left to be filled
                     ///< in the reader's units
  Origin origin = Origin::common_practice;
  std::string source;  ///< may be empty unless published
};

/// One condition of a trigger: `word` and, for comparisons and matches, what follows it.
struct CautionTerm {
  enum class Kind {
    always,
    stored,
    refrigerated,
    pre_cooled,
    vermiculite,
    frost,
    mild_winter,
    porous,
    wall_pot,
    mesh,
    perlite,
    weight,
    weight_over_one,
    volume_over,
    genus,
    taxon,
    toxicity,
    pest
  };
  Kind kind = Kind::always;
  std::string word;          ///< genus, taxon or toxicity class, lower case
  double number = 0.0;       ///< litres of volume_over
  std::optional<Pest> pest;  ///< of a pest term; absent: any
};

/// A row of the caution list. It fires when all terms of at least one alternative hold.
struct CautionRule {
  Caution caution;  ///< texts with their placeholders
  std::vector<std::vector<CautionTerm>> alternatives;
};

/// Reads a caution list: CSV with
/// code,trigger,severity,topic,hazard,advice,short_text,origin,source. A trigger is alternatives
/// between '|' of terms between '&' (data/SOURCES.md lists the terms); {kinds}, {Kinds}, {weight},
/// {lift_one}, {eats}, {eats_short}, {Pests} in the texts are filled in.
/// `kinds`: ids that a trigger may name; empty: any. A genus may be one that no kind has yet.
/// @throws InputError with every fault: unknown term, kind, severity, origin or placeholder, a code
/// given twice, an empty text, a short text over sheet_width columns.
std::vector<CautionRule> parse_cautions(std::string_view csv, std::string file,
                                        std::span<const std::string_view> kinds = {});

/// `base` with the rules of `own` in place of those of the same code, the others after them.
std::vector<CautionRule> merged(std::vector<CautionRule> base, std::vector<CautionRule> own);

/// The list compiled into the program (data/cautions.csv), parsed at each call.
std::vector<CautionRule> builtin_cautions();

/// The cautions that `facts` call for, by severity, then in the order of the rules.
std::vector<Caution> cautions_for(const CautionFacts& facts, std::span<const CautionRule> rules);

/// As above with the built-in rules.
std::vector<Caution> cautions_for(const CautionFacts& facts);

}  // namespace bulbwright
