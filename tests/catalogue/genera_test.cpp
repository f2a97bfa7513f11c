#include "catalogue/genera.hpp"

#include <catch2/catch.hpp>

#include "base/error.hpp"
#include "catalogue/catalogue.hpp"

using namespace bulbwright;

namespace {

std::string faults_of(const std::string& rows) {
  try {
    parse_genera("genus,plural,names,shape_factor,origin,source\n" + rows, "genera.csv");
  } catch (const InputError& error) {
    return describe(error);
  }
  return "no fault";
}

}  // namespace

TEST_CASE("every genus of the catalogue has a plural and a common name", "[genera][law]") {
  const Genera genera = builtin_genera();
  const Catalogue catalogue = builtin_catalogue();
  for (const Taxon& taxon : catalogue.taxa()) {
    CAPTURE(taxon.id, taxon.genus);
    CHECK(genera.of(taxon.genus) == taxon.genus_facts);
    CHECK(taxon.genus_facts.name == taxon.genus);
    CHECK_FALSE(taxon.genus_facts.names.empty());
    CHECK(taxon.genus_facts.plural != taxon.genus);
  }
  CHECK(genera.of("Sternbergia") == Genus{"Sternbergia", "Sternbergia", {}, std::nullopt});
}

TEST_CASE("a crop is known by its English and its botanical name", "[genera]") {
  const Genera genera = builtin_genera();
  const auto is = [&](const char* crop, const char* genus) {
    return is_crop_of(genera.of(genus), crop);
  };
  for (const char* word : {"hyacinth", "Hyacinths", "HYACINTHUS", " hyacinth "})
    CHECK(is(word, "Hyacinthus"));
  CHECK(is("daffodils", "Narcissus"));
  CHECK(is("grape-hyacinth", "Muscari"));
  CHECK_FALSE(is("grape-hyacinth", "Hyacinthus"));
  CHECK_FALSE(is("hyacinth", "Muscari"));
  CHECK(is("fritillaries", "Fritillaria"));
  CHECK(is("crocuses", "crocus"));
  CHECK(is("Iris", "Iris"));
  CHECK_FALSE(is("tomato", "Tulipa"));
  CHECK_FALSE(is("", "Tulipa"));
  CHECK(is("eranthis", "Eranthis"));
}

TEST_CASE("a table of genera is checked", "[genera][input]") {
  CHECK(faults_of("Eranthis,winter aconites,winter aconite|aconite,0.8,from memory,\n") ==
        "no fault");
  CHECK(faults_of("Eranthis,,aconite,,from memory,\n") ==
        "genera.csv:2:10: error: Eranthis: plural is empty; expected a plural such as tulips\n");
  CHECK(faults_of("Eranthis,aconites,aconite,9,from memory,\n") ==
        "genera.csv:2:27: error: Eranthis: shape_factor is 9; expected 0.1 to 3\n");
  CHECK(faults_of("Eranthis,aconites,aconite,,frommemory,\n") ==
        "genera.csv:2:28: error: Eranthis: origin is \"frommemory\"; expected published, common "
        "practice or from memory; did you mean \"from memory\"?\n");
  CHECK(faults_of("Eranthis,aconites,aconite,,published,\n") ==
        "genera.csv:2:38: error: Eranthis: source is empty; a published figure needs its source\n");
  CHECK(
      faults_of("Eranthis,aconites,aconite,,from memory,\nOther,others,aconite,,from memory,\n") ==
      "genera.csv:3:14: error: Other: names \"aconite\" was given before, on line 2\n");
  CHECK(faults_of("E. hyemalis,aconites,,,from memory,\n")
            .starts_with("genera.csv:2:1: error: E. hyemalis: genus is no genus;"));
}

TEST_CASE("genera of one's own replace and add", "[genera]") {
  const Genera own = parse_genera(
      "genus,plural,names,shape_factor,origin,source\n"
      "Tulipa,tulipanes,tulip,0.9,from memory,\n"
      "Sternbergia,winter daffodils,winter daffodil,,from memory,\n",
      "mine.csv");
  const Genera all = builtin_genera().with(own);
  CHECK(all.of("tulipa").plural == "tulipanes");
  CHECK(all.of("Sternbergia").plural == "winter daffodils");
  CHECK(all.of("Muscari") == builtin_genera().of("Muscari"));
  CHECK(all.all().size() == builtin_genera().all().size() + 1);
}
