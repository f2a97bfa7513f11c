#include "bulbwright/catalogue.hpp"

#include "catalogue/catalogue.hpp"
#include "library/translate.hpp"
#include "report/bulbs_report.hpp"

namespace bulbwright::library {

std::vector<Kind> kinds() {
  std::vector<Kind> result;
  const Catalogue catalogue = builtin_catalogue();
  for (const Taxon& taxon : catalogue.taxa()) result.push_back({taxon.id, taxon.name, taxon.genus});
  return result;
}

std::string kind_json(std::string_view id) {
  const Catalogue catalogue = builtin_catalogue();
  return translated([&] {
    const Taxon* const taxon = &catalogue.at(id);
    return report::bulbs_json({&taxon, 1}, {}, {});
  });
}

}  // namespace bulbwright::library
