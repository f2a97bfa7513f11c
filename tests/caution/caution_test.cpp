#include "caution/caution.hpp"

#include <algorithm>
#include <string>

#include <catch2/catch.hpp>

#include "base/error.hpp"
#include "catalogue/catalogue.hpp"
#include "materials/mesh.hpp"

using namespace bulbwright;

namespace {

const Catalogue& catalogue() {
  static const Catalogue built_in = builtin_catalogue();
  return built_in;
}

/// The example pot: three kinds in terracotta on the library's south steps.
CautionFacts south_steps() {
  CautionFacts facts;
  for (const char* id : {"tulip-triumph", "narcissus-large-cupped", "crocus-large"}) {
    facts.taxa.push_back(&catalogue().at(id));
  }
  facts.refrigerated = true;
  facts.storage_method = "paper bag";
  facts.frost_expected = true;
  facts.cracks_in_frost = true;
  facts.mesh = true;
  facts.perlite_share = 0.25;
  facts.filled_weight = Kilograms{41.6};
  facts.lift_one = Kilograms{16.0};
  facts.volume = Litres{32.0};
  facts.pests = {Pest::gopher, Pest::squirrel};
  return facts;
}

CautionFacts only(const char* id) {
  CautionFacts facts;
  facts.taxa = {&catalogue().at(id)};
  return facts;
}

const Caution* find(const std::vector<Caution>& cautions, std::string_view code) {
  const auto found = std::find_if(cautions.begin(), cautions.end(),
                                  [&](const Caution& c) { return c.code == code; });
  return found == cautions.end() ? nullptr : &*found;
}

std::vector<std::string> sheet(const std::vector<Caution>& cautions) {
  std::vector<std::string> lines;
  for (const Caution& c : cautions) {
    if (!c.short_text.empty()) lines.push_back(c.short_text);
  }
  return lines;
}

std::string faults_of(std::string_view rows) {
  const std::string head = "code,trigger,severity,topic,hazard,advice,short_text,origin,source\n";
  try {
    parse_cautions(head + std::string{rows}, "mine.csv");
  } catch (const InputError& error) {
    return describe(error);
  }
  return "no fault";
}

}  // namespace

TEST_CASE("three kinds give one line a topic on the bench sheet", "[caution][golden]") {
  const std::vector<std::string> lines = sheet(cautions_for(south_steps()));
  CHECK(lines == std::vector<std::string>{
                     "Refrigerate in a closed, labelled bag away from food: bulbs pass for onions.",
                     "Poisonous if eaten: tulips and daffodils. Keep the bulbs from children and "
                     "pets.",
                     "Open the bag of mix away from your face, wet the mix; mask, gloves; wash "
                     "hands.",
                     "About {weight} filled: fill it where it will stand; never lift it alone.",
                     "Balcony, roof or deck: ask the owner and a licensed engineer about its "
                     "weight.",
                     "Wear nitrile gloves: tulips and daffodils irritate the skin.",
                     "Wet the perlite in its bag before pouring; mask and eye protection.",
                     "Cut wire mesh stabs: thick gloves, eye protection; fold the ends under.",
                     "Frost splits this pot: feet under it, holes open, shelter from rain, wrap.",
                     "No apples, pears or other ripening fruit in that refrigerator.",
                     "Gophers and squirrels eat tulips and crocus: mesh the pot, no baits."});
}

TEST_CASE("cautions come by severity, then in the order of the list", "[caution][law]") {
  const std::vector<Caution> cautions = cautions_for(south_steps());
  CHECK(std::is_sorted(cautions.begin(), cautions.end(),
                       [](const Caution& a, const Caution& b) { return a.severity < b.severity; }));
  CHECK(cautions.front().code == "food-separate");
  CHECK(cautions.front().source.find("Public Health England") == 0);
  CHECK(find(cautions, "lift")->text ==
        "About 42 kg when filled is over the lifting guideline of 16 kg for one person: back "
        "injury. Fill the pot where it will stand; move it empty or on wheels; two people; no "
        "twisting.");
}

TEST_CASE("a caution goes when its reason goes", "[caution]") {
  struct Case {
    const char* code;
    void (*without)(CautionFacts&);
  };
  const Case cases[] = {
      {"ethylene", [](CautionFacts& f) { f.refrigerated = false; }},
      {"freeze", [](CautionFacts& f) { f.refrigerated = false; }},
      {"food-separate", [](CautionFacts& f) { f.refrigerated = false; }},
      {"food-label", [](CautionFacts& f) { f.stored = false; }},
      {"perlite-dust", [](CautionFacts& f) { f.perlite_share = 0.0; }},
      {"mesh-edge", [](CautionFacts& f) { f.mesh = false; }},
      {"frost-crack", [](CautionFacts& f) { f.frost_expected = false; }},
      {"frost-crack", [](CautionFacts& f) { f.cracks_in_frost = false; }},
      {"lift", [](CautionFacts& f) { f.filled_weight = Kilograms{16.0}; }},
      {"lift-wet", [](CautionFacts& f) { f.volume = Litres{20.0}; }},
      {"pest-gopher", [](CautionFacts& f) { f.pests = {Pest::squirrel}; }},
      {"bait-none", [](CautionFacts& f) { f.pests = {Pest::deer}; }},
      {"wildlife-law", [](CautionFacts& f) { f.pests.clear(); }},
      {"pets-tulip", [](CautionFacts& f) { f.taxa.erase(f.taxa.begin()); }},
      {"tulip-fire", [](CautionFacts& f) { f.taxa.erase(f.taxa.begin()); }},
      {"pets-crocus-spring", [](CautionFacts& f) { f.taxa.pop_back(); }},
  };
  for (const Case& c : cases) {
    CAPTURE(c.code);
    CautionFacts facts = south_steps();
    CHECK(find(cautions_for(facts), c.code) != nullptr);
    c.without(facts);
    CHECK(find(cautions_for(facts), c.code) == nullptr);
  }
  CautionFacts facts = south_steps();
  CHECK(find(cautions_for(facts), "vermiculite-old") == nullptr);
  facts.storage_method = "Damp Vermiculite";
  CHECK(find(cautions_for(facts), "vermiculite-old") != nullptr);
  CHECK(find(cautions_for(facts), "ladder") == nullptr);
  facts.wall_pot = true;
  CHECK(find(cautions_for(facts), "ladder") != nullptr);
  CautionFacts mild = only("freesia");
  CHECK(find(cautions_for(mild), "invasive-mild") == nullptr);
  mild.mild_winter = true;
  CHECK(find(cautions_for(mild), "invasive-mild") != nullptr);
}

TEST_CASE("no kind that is classed as poisonous goes without a poison caution", "[caution][law]") {
  for (const Taxon& taxon : catalogue().taxa()) {
    CAPTURE(taxon.id);
    const std::vector<Caution> cautions = cautions_for(only(taxon.id.c_str()));
    const auto has_topic = [&](std::string_view topic) {
      return std::any_of(cautions.begin(), cautions.end(), [&](const Caution& c) {
        return c.topic == topic && !c.short_text.empty();
      });
    };
    const Toxicity classes[] = {taxon.toxicity_cat, taxon.toxicity_dog, taxon.toxicity_people};
    const bool poisonous = std::any_of(std::begin(classes), std::end(classes), [](Toxicity t) {
      return t == Toxicity::moderate || t == Toxicity::severe;
    });
    const bool unverified = std::find(std::begin(classes), std::end(classes),
                                      Toxicity::unverified) != std::end(classes);
    CHECK(std::any_of(cautions.begin(), cautions.end(), [](const Caution& c) {
            return c.short_text.starts_with("Poisonous if eaten: ");
          }) == poisonous);
    CHECK(has_topic("unknown-poison") == unverified);
    // A severe class calls for a caution of high severity.
    if (taxon.toxicity_cat == Toxicity::severe) {
      CHECK(std::any_of(cautions.begin(), cautions.end(), [](const Caution& c) {
        return c.topic == "poison" && c.severity == CautionSeverity::high;
      }));
    }
    // Skin: what the catalogue says of the kind in words.
    CHECK(has_topic("skin") == (taxon.skin != "none usually reported"));
  }
}

// Pet Poison Helpline, pages on tulip and hyacinth, narcissus, snowdrops: named there as harmful to
// cats and dogs. Louisiana State University School of Veterinary Medicine: iris.
TEST_CASE("kinds on published poison lists are warned of", "[caution][published]") {
  for (const char* id :
       {"tulip-triumph", "hyacinth", "narcissus-poeticus", "galanthus", "iris-reticulata"}) {
    CAPTURE(id);
    const std::vector<std::string> lines = sheet(cautions_for(only(id)));
    CHECK(std::any_of(lines.begin(), lines.end(), [&](const std::string& line) {
      return line.starts_with("Poisonous if eaten: " + catalogue().at(id).genus_facts.plural);
    }));
  }
}

TEST_CASE("bench lines stay within 90 columns with every kind in the pot", "[caution][law]") {
  CautionFacts facts = south_steps();
  facts.taxa.clear();
  for (const Taxon& taxon : catalogue().taxa()) {
    facts.taxa.push_back(&taxon);
    for (const Caution& caution : cautions_for(facts)) {
      CAPTURE(caution.code, caution.short_text);
      CHECK(caution.short_text.size() <= 90);
      CHECK(caution.text.find('{') == std::string::npos);
      const std::size_t place = caution.short_text.find('{');
      CHECK(place == caution.short_text.find("{weight}"));  // in the reader's units
    }
  }
  const auto lines = sheet(cautions_for(facts));
  CHECK(std::find(lines.begin(), lines.end(),
                  "Poisonous if eaten: most kinds here. Keep the bulbs from children and pets.") !=
        lines.end());
}

// Curtis, Curtis and Miller, HortTechnology 19 (2009) 499: tulip alone showed no resistance to
// voles, narcissus and snowdrop resisted.
TEST_CASE("what an animal eats is told by kind", "[caution][published]") {
  CautionFacts facts;
  for (const char* id : {"tulip-triumph", "narcissus-large-cupped", "galanthus"}) {
    facts.taxa.push_back(&catalogue().at(id));
  }
  facts.pests = {Pest::vole};
  const Caution* vole = nullptr;
  const std::vector<Caution> cautions = cautions_for(facts);
  vole = find(cautions, "pest-vole");
  REQUIRE(vole != nullptr);
  CHECK(vole->hazard ==
        "Voles eat Triumph tulip; seldom eat, but may dig up, Large-cupped daffodil and Snowdrop");
  CHECK(vole->short_text == "Voles eat tulips: mesh the pot, no baits.");
  CHECK(eaten_by(catalogue().at("tulip-triumph"), Pest::mouse) == Eaten::eaten);
  facts.taxa.erase(facts.taxa.begin());
  CHECK(find(cautions_for(facts), "pest-vole")->short_text ==
        "Voles seldom eat what is in this pot, but dig: mesh it.");
  for (const std::string_view pest : words_of<Pest>()) {
    facts.pests = {*from_word<Pest>(pest)};
    CAPTURE(pest);
    CHECK(find(cautions_for(facts), "pest-" + std::string{pest}) != nullptr);
  }
}

TEST_CASE("a fault in a caution list names line, code and field", "[caution][input]") {
  CHECK(faults_of("a,always,high,t,Hazard,Advice,Short,common practice,\n") == "no fault");
  CHECK(faults_of("a,allways,high,t,Hazard,Advice,Short,common practice,\n") ==
        "mine.csv:2:3: error: a: trigger holds the unknown term \"allways\"; did you mean "
        "\"always\"?\n");
  CHECK(faults_of("a,pest=gofer,high,t,Hazard,Advice,Short,common practice,\n")
            .find("trigger holds \"pest=gofer\"; expected any or a known pest") !=
        std::string::npos);
  CHECK(faults_of("a,volume>x,high,t,Hazard,Advice,Short,common practice,\n")
            .find("expected a number of litres") != std::string::npos);
  CHECK(faults_of("a,always,hihg,t,Hazard,Advice,Short,common practice,\n")
            .find("severity is \"hihg\"; expected high, medium or low; did you mean \"high\"?") !=
        std::string::npos);
  CHECK(faults_of("a,always,high,t,Hazard,Advice,Short,published,\n")
            .find("source is empty; a published caution needs its source") != std::string::npos);
  CHECK(faults_of("a,always,high,t,{kind} hazard,Advice,Short,common practice,\n")
            .find("hazard holds the unknown placeholder \"{kind}\"; did you mean \"{kinds}\"?") !=
        std::string::npos);
  CHECK(faults_of("a,always,high,t,,Advice,Short,common practice,\n") ==
        "mine.csv:2:17: error: a: hazard is empty; expected some text\n");
  CHECK(faults_of("a,always,high,t,H,A,S,common practice,\na,always,high,t,H,A,S,common "
                  "practice,\n")
            .find("mine.csv:3:1: error: a: code was given before, on line 2") != std::string::npos);
  CHECK(faults_of("a,always,high,t,H,A," + std::string(91, 'x') + ",common practice,\n")
            .find("short_text is over 90 columns") != std::string::npos);
}
