#include "catalogue/catalogue.hpp"

#include <algorithm>
#include <string>

#include <catch2/catch.hpp>
#include <fmt/core.h>

#include "base/error.hpp"

using namespace bulbwright;

namespace {

std::string in_quotes(std::string_view text) {
  std::string out = "\"";
  for (const char c : text) {
    if (c == '"') out += '"';
    out += c;
  }
  return out + "\"";
}

/// The rows of a built-in taxon under another id, to be varied.
std::string rows_of(const Catalogue& catalogue, std::string_view id, std::string_view as) {
  std::string text = "taxon,quantity,value,low,high,unit,origin,source\n";
  for (const TaxonFact& f : catalogue.at(id).facts) {
    text += fmt::format("{},{},{},{},{},{},{},{}\n", as, f.quantity, in_quotes(f.value), f.low,
                        f.high, f.unit, word_of(f.origin), in_quotes(f.source));
  }
  return text;
}

std::string replaced(std::string text, std::string_view from, std::string_view to) {
  const std::size_t at = text.find(from);
  REQUIRE(at != std::string::npos);
  return text.replace(at, from.size(), to);
}

std::string faults_of(const std::string& csv) {
  try {
    parse_catalogue(csv, "mine.csv");
  } catch (const InputError& error) {
    return describe(error);
  }
  return "no fault";
}

const Catalogue& builtin() {
  static const Catalogue catalogue = builtin_catalogue();
  return catalogue;
}

}  // namespace

TEST_CASE("the built-in catalogue holds every trade group, complete", "[catalogue]") {
  CHECK(builtin().taxa().size() == 60);
  CHECK(builtin().ids().front() == "tulip-kaufmanniana");
  std::size_t facts = 0;
  for (const Taxon& taxon : builtin().taxa()) {
    CAPTURE(taxon.id);
    facts += taxon.facts.size();
    CHECK(taxon.facts.size() >= 41);
    CHECK_FALSE(taxon.name.empty());
    CHECK_FALSE(taxon.genus.empty());
  }
  CHECK(facts == 2713);
  const Taxon* triumph = builtin().find("tulip-triumph");
  REQUIRE(triumph != nullptr);
  CHECK(triumph->name == "Triumph tulip");
  CHECK(triumph->circumference_cm.value == 12.0);
  CHECK(triumph->depth_mm.low == 100.0);
  CHECK(triumph->cold_form == ColdForm::dry_ok);
  CHECK(triumph->gopher == Eaten::eaten);
  CHECK(triumph->plant_by == PlantBy::december_january_after_cold);
  CHECK(builtin().find("ixia")->vole == Eaten::unknown);
  CHECK(builtin().find("nothing") == nullptr);
}

TEST_CASE("names and ids are not shared", "[catalogue][law]") {
  std::vector<std::string> names, ids;
  for (const Taxon& taxon : builtin().taxa()) {
    names.push_back(taxon.name);
    ids.push_back(taxon.id);
  }
  for (auto* list : {&names, &ids}) {
    std::sort(list->begin(), list->end());
    CHECK(std::adjacent_find(list->begin(), list->end()) == list->end());
  }
}

TEST_CASE("an unknown taxon is answered with its near miss", "[catalogue][input]") {
  CHECK_THROWS_WITH(builtin().at("tulip-triumhp"),
                    R"(unknown taxon "tulip-triumhp"; did you mean "tulip-triumph"?)");
  CHECK_THROWS_WITH(builtin().at("zzzzzzzz"), R"(unknown taxon "zzzzzzzz")");
}

TEST_CASE("the rows of a taxon make the same taxon again", "[catalogue][law]") {
  for (const std::string_view id : builtin().ids()) {
    CAPTURE(id);
    const Catalogue again = parse_catalogue(rows_of(builtin(), id, id), "mine.csv");
    REQUIRE(again.taxa().size() == 1);
    const Taxon &a = again.taxa()[0], &b = builtin().at(id);
    CHECK(a.depth_mm.high == b.depth_mm.high);
    CHECK(a.toxicity_horse == b.toxicity_horse);
    CHECK(a.facts.size() == b.facts.size());
    CHECK(a.facts[0].line == 2);
    CHECK(a.facts[0].file == "mine.csv");
  }
}

TEST_CASE("a fault of a row names file, line, column, field and what was expected",
          "[catalogue][input]") {
  const std::string good = rows_of(builtin(), "muscari", "pot-muscari");
  CHECK(faults_of(good) == "no fault");
  const auto fault = [&](std::string_view from, std::string_view to) {
    return faults_of(replaced(good, from, to));
  };
  CHECK(fault(",bulb_circumference", ",bulb_circumferense") ==
        "mine.csv:4:13: error: pot-muscari: unknown quantity \"bulb_circumferense\"; did you mean "
        "\"bulb_circumference\"?\n");
  CHECK(fault("\"9\",7,11,cm", "\"9\",10,11,cm") ==
        "mine.csv:4:36: error: pot-muscari: bulb_circumference: low is 10, above the value 9\n");
  CHECK(fault("\"9\",7,11,cm", "\"9\",7,8,cm") ==
        "mine.csv:4:38: error: pot-muscari: bulb_circumference: high is 8, under the value 9\n");
  CHECK(fault("\"9\",7,11,cm", "\"9\",,11,cm") ==
        "mine.csv:4:36: error: pot-muscari: bulb_circumference: low is empty; low and high go "
        "together\n");
  CHECK(fault("\"9\",7,11,cm", "\"9 cm\",7,11,cm") ==
        "mine.csv:4:32: error: pot-muscari: bulb_circumference: value is \"9 cm\"; expected a "
        "number from 1 to 60 cm\n");
  CHECK(fault("\"9\",7,11,cm", "\"90\",7,11,cm") ==
        "mine.csv:4:32: error: pot-muscari: bulb_circumference: value is 90; expected 1 to 60 "
        "cm\n");
  CHECK(fault("\"9\",7,11,cm", "\"9\",7,11,mm") ==
        "mine.csv:4:41: error: pot-muscari: bulb_circumference: unit is \"mm\"; expected "
        "\"cm\"\n");
  CHECK(fault("cold_form,\"dry-ok\"", "cold_form,\"dry-okay\"")
            .find("value is \"dry-okay\"; expected dry-ok, moist-only or none; did you mean "
                  "\"dry-ok\"?") != std::string::npos);
  CHECK(fault("cm,common practice", "cm,comon practice")
            .find("origin is \"comon practice\"; expected published, common practice or from "
                  "memory; did you mean \"common practice\"?") != std::string::npos);
  CHECK(fault("cm,common practice,\"\"", "cm,published,\"\"")
            .find("source is empty; a published figure needs its source") != std::string::npos);
  CHECK(fault("pot-muscari,genus", "Pot Muscari,genus") ==
        "mine.csv:3:1: error: \"Pot Muscari\" is no taxon id; expected lower-case letters, digits "
        "and hyphens\n");
  CHECK(fault("light,\"sun to part shade\",,", "light,\"sun to part shade\",1,2")
            .find("low must be empty; words have no range") != std::string::npos);
}

TEST_CASE("a good row below a faulty one of the same quantity leaves the fault to be told",
          "[catalogue][input]") {
  const std::string header = "taxon,quantity,value,low,high,unit,origin,source\n";
  CHECK(faults_of(header + "mine,cold_weeks,abc,,,weeks,from memory,\n"
                           "mine,cold_weeks,15,,,weeks,from memory,\n") ==
        "mine.csv:2:17: error: mine: cold_weeks: value is \"abc\"; expected a number from 0 to 30 "
        "weeks\n");
  CHECK(faults_of(header + "mine,cold_weeks,15,,,weeks,guessed,\n"
                           "mine,cold_weeks,15,,,weeks,from memory,\n"
                           "mine,cold_weeks,16,,,weeks,from memory,\n") ==
        "mine.csv:2:28: error: mine: cold_weeks: origin is \"guessed\"; expected published, common "
        "practice or from memory\n"
        "mine.csv:4:6: error: mine: cold_weeks was given before, on line 3\n");
}

TEST_CASE("columns count code points, not bytes", "[catalogue][input]") {
  const std::string good = rows_of(builtin(), "muscari", "pot-muscari");
  const std::string text = replaced(good, "name,\"Grape hyacinth\"", "name,\"Grapé, hyacinthé\"");
  CHECK(faults_of(text) == "no fault");
  CHECK(faults_of(replaced(text, "hyacinthé\",,,,common", "hyacinthé\",,,,komon"))
            .starts_with("mine.csv:2:40: error:"));
}

TEST_CASE("what a whole taxon lacks or contradicts is said", "[catalogue][input]") {
  const std::string good = rows_of(builtin(), "muscari", "pot-muscari");
  const auto without = [&](std::string_view quantity) {
    const std::size_t at = good.find("pot-muscari," + std::string{quantity} + ",");
    REQUIRE(at != std::string::npos);
    return faults_of(std::string{good}.erase(at, good.find('\n', at) + 1 - at));
  };
  CHECK(without("light") == "mine.csv:2:1: error: pot-muscari: a quantity is missing: light\n");
  CHECK(without("vole") == "no fault");
  CHECK(without("toxicity_cat") == "no fault");
  CHECK(
      without("refrigerator_temp").find("refrigerator_temp: missing, though cold_form is dry-ok") !=
      std::string::npos);
  CHECK(faults_of(good + "pot-muscari,light,sun,,,,common practice,\n")
            .find("pot-muscari: light was given before, on line ") != std::string::npos);
  CHECK(faults_of(replaced(good, "cold_form,\"dry-ok\"", "cold_form,\"moist-only\""))
            .find("dry_cold_max_weeks: must be 0 where cold_form is moist-only") !=
        std::string::npos);
  CHECK(
      faults_of(replaced(good, "max_refrigerated_weeks,\"10\",8", "max_refrigerated_weeks,\"9\",5"))
          .find("max_refrigerated_weeks: below dry_cold_max_weeks") != std::string::npos);
  CHECK(faults_of(replaced(good, "depth_to_base,\"100\",50", "depth_to_base,\"100\",20"))
            .find("least 20 mm leaves the smallest bulb, 23 mm high, above the surface") !=
        std::string::npos);
  CHECK(faults_of("taxon,quantity,value,low,high,unit,origin,source\n") ==
        "mine.csv:1:1: error: no taxon; expected at least one row\n");
  CHECK(faults_of("taxon,quantity,value,low,high,units,origin,source\na,b,c,,,,,\n") ==
        "mine.csv:1:1: error: no column \"unit\"; did you mean \"units\"?\n");
}

TEST_CASE("several faults are reported together, in order", "[catalogue][input]") {
  const std::string good = rows_of(builtin(), "muscari", "pot-muscari");
  const std::string text =
      replaced(replaced(good, "light,\"sun", "light,\"son"), "\"9\",7,11,cm", "\"9\",7,11,mm");
  const std::string faults = faults_of(text);
  CHECK(std::count(faults.begin(), faults.end(), '\n') == 2);
  CHECK(faults.find("bulb_circumference") < faults.find("light"));
}

TEST_CASE("a file of one's own changes single figures and adds taxa", "[catalogue]") {
  const std::string header = "taxon,quantity,value,low,high,unit,origin,source\n";
  const Catalogue changed = merged(
      builtin(), header + "tulip-triumph,depth_to_base,150,120,240,mm,from memory,my own terrace\n",
      "dir/taxa.csv");
  CHECK(changed.taxa().size() == builtin().taxa().size());
  CHECK(changed.at("tulip-triumph").depth_mm.value == 150.0);
  CHECK(changed.at("tulip-triumph").facts.size() == builtin().at("tulip-triumph").facts.size());
  CHECK(changed.at("tulip-fringed").depth_mm.value == 180.0);
  const auto& facts = changed.at("tulip-triumph").facts;
  const auto fact = std::find_if(facts.begin(), facts.end(),
                                 [](const TaxonFact& f) { return f.quantity == "depth_to_base"; });
  CHECK(fact->source == "my own terrace");
  CHECK(fact->file == "dir/taxa.csv");

  const Catalogue more = merged(builtin(), rows_of(builtin(), "muscari", "muscari-mine"), "x.csv");
  CHECK(more.taxa().size() == 61);
  CHECK(more.ids().back() == "muscari-mine");

  try {
    merged(builtin(),
           header +
               "muscari,max_refrigerated_weeks,3,1,5,weeks,from memory,\n"
               "new-kind,name,New kind,,,,from memory,\n",
           "dir/taxa.csv");
    FAIL("contradictory and incomplete figures were taken");
  } catch (const InputError& error) {
    CHECK(error.faults().size() == 2);
    CHECK(describe(error).starts_with(
        "dir/taxa.csv:2:1: error: muscari: max_refrigerated_weeks: below dry_cold_max_weeks\n"
        "dir/taxa.csv:3:1: error: new-kind: quantities are missing: genus, bulb_circumference"));
  }
}
