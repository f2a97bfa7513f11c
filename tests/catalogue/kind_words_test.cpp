// Words of growers: the English and botanical names of trade catalogues, common practice.
#include "catalogue/kind_words.hpp"

#include <catch2/catch.hpp>

#include "base/error.hpp"

using namespace bulbwright;

namespace {

const Catalogue& catalogue() {
  static const Catalogue all = builtin_catalogue();
  return all;
}

std::string called(std::string_view words) {
  std::string ids;
  for (const Taxon* taxon : kinds_called(catalogue(), words)) {
    ids += (ids.empty() ? "" : " ") + taxon->id;
  }
  return ids;
}

}  // namespace

TEST_CASE("a kind is found by its id and by every name of its own", "[catalogue][words]") {
  for (const Taxon& taxon : catalogue().taxa()) {
    CAPTURE(taxon.id);
    CHECK(called(taxon.id) == taxon.id);
    CHECK(called(taxon.name) == taxon.id);
    CHECK(called(plain_name(taxon.name)) == taxon.id);
    if (!taxon.name.ends_with("s") && plain_name(taxon.name) == taxon.name) {
      CHECK(&kind_called(catalogue(), taxon.name + "s") == &taxon);
    }
  }
}

TEST_CASE("names are read in any case, number and spelling", "[catalogue][words]") {
  CHECK(called("grape hyacinth") == "muscari");
  CHECK(called("Grape-Hyacinths") == "muscari");
  CHECK(called("hyacinth grape") == "muscari");
  CHECK(called("snowdrops") == "galanthus");
  CHECK(called("Galanthus") == "galanthus");
  CHECK(called("Triumph") == "tulip-triumph");
  CHECK(called("Scilla siberica") == "scilla-siberica");
  CHECK(called("Snake\xe2\x80\x99s head fritillaries") == "fritillaria-meleagris");
  CHECK(called("Tommasinis crocuses") == "crocus-tommasinianus");
  CHECK(called("Dutch irises") == "iris-hollandica");
  CHECK(called("paperwhites") == "narcissus-tazetta-tender");
}

TEST_CASE("a kind's own name goes before those of its genus", "[catalogue][words]") {
  CHECK(called("hyacinth") == "hyacinth");
  CHECK(called("hyacinths") == "hyacinth");
  CHECK(called("crocus") == "crocus-large crocus-species crocus-tommasinianus");
  CHECK(called("iris") == "iris-reticulata iris-hollandica");
  for (const char* word : {"tulip", "tulips", "Tulipa", "TULIP"}) {
    CAPTURE(word);
    const auto kinds = kinds_called(catalogue(), word);
    CHECK(kinds.size() == 15);
    for (const Taxon* kind : kinds) CHECK(kind->genus == "Tulipa");
  }
  for (const char* word : {"daffodil", "narcissi", "Narcissus"}) {
    CAPTURE(word);
    for (const Taxon* kind : kinds_called(catalogue(), word)) CHECK(kind->genus == "Narcissus");
    CHECK(kinds_called(catalogue(), word).size() > 10);
  }
}

TEST_CASE("beginnings of words do where no whole word does", "[catalogue][words]") {
  CHECK(called("fosteri") == "tulip-fosteriana");
  CHECK(called("large cup") == "narcissus-large-cupped");
  CHECK(called("tu tri") == "");
  CHECK(called("") == "");
  CHECK(called("  -  ") == "");
  CHECK(called("rose") == "");
}

TEST_CASE("words that fit several kinds or none are told with what would do",
          "[catalogue][words][input]") {
  CHECK_THROWS_WITH(kind_called(catalogue(), "crocus"),
                    "\"crocus\" fits 3 kinds; expected one of crocus-large (Large Dutch crocus), "
                    "crocus-species (Snow crocus), crocus-tommasinianus (Tommasini's crocus)");
  CHECK_THROWS_WITH(kind_called(catalogue(), "tulip-triumhp"),
                    "unknown taxon \"tulip-triumhp\"; did you mean \"tulip-triumph\"?");
  CHECK_THROWS_WITH(kind_called(catalogue(), "Dafodil"),
                    "unknown taxon \"Dafodil\"; did you mean \"daffodil\"?");
  CHECK_THROWS_WITH(kind_called(catalogue(), "zzzzzzzz"),
                    "unknown taxon \"zzzzzzzz\"; `bulbwright bulbs` lists them");
}
