// Any bytes as one of the tables of --data: read, or refused with an InputError whose text keeps
// its limits and holds nothing that a terminal obeys. The first byte chooses the table. Run:
//   build/fuzz/tests/data_tables_fuzz -dict=tests/fuzz/data_tables.dict -max_len=20000 -timeout=5
//     CORPUS
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

#include "base/error.hpp"
#include "base/utf8.hpp"
#include "catalogue/catalogue.hpp"
#include "caution/caution.hpp"
#include "climate/normals_check.hpp"
#include "climate/place.hpp"
#include "flowering/bloom_parameters.hpp"
#include "shopping/pack_sizes.hpp"

using namespace bulbwright;

namespace {

void require(bool holds) {
  if (!holds) std::abort();
}

const Catalogue& builtin() {
  static const Catalogue catalogue = builtin_catalogue();
  return catalogue;
}

void read_taxa(std::string_view text) {
  const Catalogue catalogue = merged(builtin(), text, "fuzz.csv");
  for (const Taxon& taxon : catalogue.taxa()) {
    require(!taxon.id.empty() && !taxon.facts.empty());
    require(taxon.cold_weeks.low <= taxon.cold_weeks.value &&
            taxon.cold_weeks.value <= taxon.cold_weeks.high);
  }
  require(catalogue.taxa().size() >= builtin().taxa().size());
}

void read_genera(std::string_view text) {
  const Genera genera = builtin_genera().with(parse_genera(text, "fuzz.csv"));
  for (const Genus& genus : genera.all()) {
    require(!genus.plural.empty() && genera.of(genus.name) == genus);
    require(is_crop_of(genus, genus.name));
  }
}

void read_places(std::string_view text) {
  PlaceCatalogue places{parse_places_csv(text, "fuzz.csv")};
  for (const Place& place : places.places()) {
    require(normals_faults(place.normals).empty());
    require(places.find(place.name).name == place.name);
  }
}

void read_bloom(std::string_view text) {
  BloomTable table = BloomTable::builtin();
  table.merge(BloomTable::parse(text, "fuzz.csv"));
  for (const Taxon& taxon : builtin().taxa()) require(table.of(taxon).heat_sum >= 1.0);
}

void read_cautions(std::string_view text) {
  const auto rules = merged(builtin_cautions(), parse_cautions(text, "fuzz.csv"));
  CautionFacts facts;
  for (const Taxon& taxon : builtin().taxa()) facts.taxa.push_back(&taxon);
  facts.pests = {Pest::gopher, Pest::deer};
  facts.filled_weight = Kilograms{30.0};
  (void)cautions_for(facts, rules);
}

void read_packs(std::string_view text) {
  const auto packs = merged(builtin_packs(), parse_packs(text, "fuzz.csv"));
  for (const PackSizes& row : packs) {
    int pieces = 0;
    for (const Pack& pack : fewest_packs(37, row.sizes)) pieces += pack.size * pack.count;
    require(pieces >= 37);
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size == 0) return 0;
  const std::string_view text{reinterpret_cast<const char*>(data) + 1, size - 1};
  constexpr void (*readers[])(std::string_view){read_taxa,  read_genera,   read_places,
                                                read_bloom, read_cautions, read_packs};
  try {
    readers[data[0] % std::size(readers)](text);
  } catch (const InputError& error) {
    require(!error.faults().empty());
    const std::string message = describe(error);
    require(message.size() <= 2100 && message.ends_with('\n'));
    for (std::size_t i = 0; i < message.size();) {
      const CodePoint point = code_point_at(message, i);
      require(point.valid && (!is_control(point.value) || point.value == '\n'));
      i += point.bytes;
    }
  }
  return 0;
}
