#include "catalogue/catalogue.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "base/csv_row.hpp"
#include "base/near_miss.hpp"
#include "catalogue/checks.hpp"
#include "catalogue/rows.hpp"
#include "catalogue/rules.hpp"

namespace bulbwright {

namespace embedded {
extern const std::string_view taxa_csv;
}

namespace {

std::vector<Draft> drafts_of(const Catalogue& base) {
  std::vector<Draft> drafts;
  for (const Taxon& taxon : base.taxa()) {
    Draft draft{taxon, {}, {}, {}};
    for (const TaxonFact& fact : taxon.facts) draft.given.set(quantity_index(fact.quantity));
    if (!taxon.facts.empty()) draft.first = {taxon.facts[0].file, taxon.facts[0].line, 1};
    drafts.push_back(std::move(draft));
  }
  return drafts;
}

/// Missing quantities, else contradictions, of one taxon.
void check(Draft& draft, std::vector<InputFault>& faults) {
  std::vector<std::string_view> missing;
  const auto rules = quantity_rules();
  for (std::size_t i = 0; i < rules.size(); ++i) {
    if (rules[i].required && !draft.given[i]) missing.push_back(rules[i].name);
  }
  if (!missing.empty()) {
    faults.push_back(
        {draft.first, fmt::format("{}: {} missing: {}", draft.taxon.id,
                                  missing.size() == 1 ? "a quantity is" : "quantities are",
                                  fmt::join(missing, ", "))});
    return;
  }
  for (const Contradiction& found : contradictions(draft.taxon)) {
    const TaxonFact* fact = draft.fact(found.quantity);
    const SourcePlace place = fact ? SourcePlace{fact->file, fact->line, 1} : draft.first;
    faults.push_back(
        {place, fmt::format("{}: {}: {}", draft.taxon.id, found.quantity, found.message)});
  }
}

}  // namespace

Catalogue::Catalogue(std::vector<Taxon> taxa, Genera genera)
    : taxa_{std::move(taxa)}, genera_{std::move(genera)} {
  for (Taxon& taxon : taxa_) taxon.genus_facts = genera_.of(taxon.genus);
}

const Taxon* Catalogue::find(std::string_view id) const {
  const auto found =
      std::find_if(taxa_.begin(), taxa_.end(), [&](const Taxon& t) { return t.id == id; });
  return found == taxa_.end() ? nullptr : &*found;
}

const Taxon& Catalogue::at(std::string_view id) const {
  if (const Taxon* taxon = find(id)) return *taxon;
  throw InvalidValue{"", fmt::format("unknown taxon {}{}", in_quotes(id), did_you_mean(id, ids()))};
}

std::vector<std::string_view> Catalogue::ids() const {
  std::vector<std::string_view> result;
  for (const Taxon& taxon : taxa_) result.emplace_back(taxon.id);
  return result;
}

Catalogue merged(const Catalogue& base, std::string_view csv, std::string file) {
  CsvTable table = read_csv(csv, std::move(file));
  std::vector<Draft> drafts = drafts_of(base);
  std::vector<InputFault> faults = read_rows(table, drafts);
  if (faults.empty()) {
    for (Draft& draft : drafts) check(draft, faults);
  }
  if (faults.empty() && drafts.empty()) {
    faults.push_back({{table.file, 1, 1}, "no taxon; expected at least one row"});
  }
  throw_if_any(std::move(faults));

  std::vector<Taxon> taxa;
  taxa.reserve(drafts.size());
  for (Draft& draft : drafts) taxa.push_back(std::move(draft.taxon));
  return Catalogue{std::move(taxa), base.genera()};
}

Catalogue parse_catalogue(std::string_view csv, std::string file, Genera genera) {
  return merged(Catalogue{{}, std::move(genera)}, csv, std::move(file));
}

Catalogue builtin_catalogue() {
  return parse_catalogue(embedded::taxa_csv, "taxa.csv", builtin_genera());
}

}  // namespace bulbwright
