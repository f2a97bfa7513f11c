#include "report/bulbs_report.hpp"

#include <fmt/core.h>

#include "base/text.hpp"
#include "report/common_json.hpp"
#include "report/section_json.hpp"
#include "report/spreadsheet.hpp"

namespace bulbwright::report {
namespace {

/// A figure as a number; the catalogue has checked that it is one.
Json number_json(const std::string& text) {
  const double value = rounded(plain_number(text).value_or(0.0), 1e-6);
  const auto whole = static_cast<long>(value);
  return static_cast<double>(whole) == value ? Json(whole) : Json(value);
}

Json figure_json(const TaxonFact& fact) {
  Json json{{"quantity", fact.quantity}};
  if (fact.unit.empty()) {
    json["value"] = fact.value;
  } else {
    json["value"] = number_json(fact.value);
    if (!fact.low.empty()) {
      json["low"] = number_json(fact.low);
      json["high"] = number_json(fact.high);
    }
    json["unit"] = fact.unit;
  }
  json["origin"] = word_of(fact.origin);
  if (!fact.source.empty()) json["source"] = fact.source;
  return json;
}

}  // namespace

std::string bulbs_json(std::span<const Taxon* const> taxa, std::span<const std::string> words,
                       const AskedFlags& flags) {
  Json list = Json::array();
  for (const Taxon* taxon : taxa) {
    Json figures = Json::array();
    for (const TaxonFact& fact : taxon->facts) figures.push_back(figure_json(fact));
    list.push_back(Json{{"taxon", taxon->id},
                        {"name", taxon->name},
                        {"genus", taxon->genus},
                        {"figures", std::move(figures)}});
  }
  Json json = document("bulbwright.bulbs/1");
  json["request"]["ids"] = Json::array();
  for (const std::string& word : words) json["request"]["ids"].push_back(word);
  for (const auto& [flag, value] : flags) json["request"][flag] = value;
  json["taxa"] = std::move(list);
  return document_text(json);
}

std::string bulbs_csv(std::span<const Taxon* const> taxa) {
  std::string csv = "taxon,quantity,value,low,high,unit,origin,source\r\n";
  for (const Taxon* taxon : taxa) {
    for (const TaxonFact& fact : taxon->facts) {
      const std::string value = fact.unit.empty() ? text_cell(fact.value) : fact.value;
      csv += fmt::format("{},{},{},{},{},{},{},{}\r\n", taxon->id, fact.quantity, value, fact.low,
                         fact.high, fact.unit, word_of(fact.origin), text_cell(fact.source));
    }
  }
  return csv;
}

}  // namespace bulbwright::report
