#include "flowering/observed.hpp"

#include <fstream>
#include <iterator>
#include <set>
#include <string>

#include <catch2/catch.hpp>

#include "base/csv.hpp"
#include "catalogue/catalogue.hpp"
#include "source_paths.hpp"

using namespace bulbwright;

namespace {

const Catalogue& catalogue() {
  static const Catalogue known = builtin_catalogue();
  return known;
}

std::string text_of(const std::string& name) {
  std::ifstream in{fixture::source_path("tests/vectors/" + name)};
  REQUIRE(in);
  return {std::istreambuf_iterator<char>{in}, {}};
}

/// The genera of a column of kinds: ids, or wider labels such as "tulip-any".
std::set<std::string> genera_in(const std::string& file, const char* column,
                                const char* only_with = nullptr) {
  std::set<std::string> genera;
  const std::string text = text_of(file);
  const CsvTable table = read_csv(text, file);
  for (const CsvRecord& record : table.records) {
    if (only_with != nullptr && record.fields[table.column(only_with)].empty()) continue;
    const std::string& label = record.fields[table.column(column)];
    const std::string first = label.substr(0, label.find('-'));
    for (const Taxon& taxon : catalogue().taxa()) {
      if (taxon.id.substr(0, taxon.id.find('-')) == first) genera.insert(taxon.genus);
    }
  }
  return genera;
}

std::set<std::string> genera_observed(Treatment treatment) {
  std::set<std::string> genera;
  for (const Taxon& taxon : catalogue().taxa()) {
    if (ever_observed(taxon, treatment)) genera.insert(taxon.genus);
  }
  return genera;
}

}  // namespace

TEST_CASE("a treatment was observed where the evidence has rows of it", "[observed]") {
  std::set<std::string> natural = genera_in("garden_dates.csv", "kind");
  natural.merge(genera_in("bloom_dates.csv", "label"));
  CHECK(genera_observed(Treatment::natural) == natural);
  std::set<std::string> stored = genera_in("prechilled_dates.csv", "kind");
  stored.merge(genera_in("bloom_dates.csv", "label", "stored_weeks"));
  CHECK(genera_observed(Treatment::refrigerated) == stored);
  CHECK(genera_observed(Treatment::forced) == genera_in("bloom_forcing.csv", "taxon"));
  CHECK(genera_observed(Treatment::in_growth).empty());
}
