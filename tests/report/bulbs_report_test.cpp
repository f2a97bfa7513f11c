#include "report/bulbs_report.hpp"

#include <sstream>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "catalogue/catalogue.hpp"
#include "report/text_layout.hpp"

using namespace bulbwright;
using namespace bulbwright::report;

namespace {

std::vector<const Taxon*> all(const Catalogue& catalogue) {
  std::vector<const Taxon*> taxa;
  for (const Taxon& taxon : catalogue.taxa()) taxa.push_back(&taxon);
  return taxa;
}

}  // namespace

TEST_CASE("CSV of the catalogue is the catalogue again", "[bulbs_report][law]") {
  const Catalogue catalogue = builtin_catalogue();
  const Catalogue again = parse_catalogue(bulbs_csv(all(catalogue)), "again.csv");
  CHECK(again.ids() == catalogue.ids());
  CHECK(bulbs_json(all(again), {}, {}) == bulbs_json(all(catalogue), {}, {}));
}

TEST_CASE("every figure of a taxon is told with its origin and source", "[bulbs_report][law]") {
  const Catalogue catalogue = builtin_catalogue();
  TextStyle style;
  for (const Taxon& taxon : catalogue.taxa()) {
    CAPTURE(taxon.id);
    const std::string text = taxon_text(taxon, style);
    std::istringstream lines{text};
    std::size_t told = 0;
    for (std::string line; std::getline(lines, line);) {
      CAPTURE(line);
      if (line.starts_with("  ") && line[2] != ' ') ++told;
      CHECK(columns(line) <= 80);
    }
    // Name and genus are in the heading.
    CHECK(told == taxon.facts.size() - 2);
    const auto json = nlohmann::json::parse(bulbs_json(std::vector{&taxon}, {}, {}));
    CHECK(json["taxa"][0]["figures"].size() == taxon.facts.size());
  }
}

TEST_CASE("figures are told in the units asked for", "[bulbs_report]") {
  const Catalogue catalogue = builtin_catalogue();
  TextStyle style;
  const std::string metric = taxon_text(catalogue.at("tulip-triumph"), style);
  CHECK(metric.find("180 mm (100 to 250)") != std::string::npos);
  CHECK(metric.find("12 cm (10 to 14)") != std::string::npos);
  CHECK(metric.find("17 °C (13 to 18)") != std::string::npos);
  CHECK(metric.find("11 weeks (8 to 13)") != std::string::npos);
  style.units = Units::inches;
  const std::string inches = taxon_text(catalogue.at("tulip-triumph"), style);
  CHECK(inches.find("7 1/8 in (3 7/8 to 9 7/8)") != std::string::npos);
  CHECK(inches.find("63 °F (55 to 64)") != std::string::npos);
}

TEST_CASE("the list has a line for every taxon", "[bulbs_report]") {
  const Catalogue catalogue = builtin_catalogue();
  TextStyle style;
  for (const int width : {60, 80, 99}) {
    style.width = width;
    std::istringstream lines{bulbs_list_text(all(catalogue), style)};
    int count = 0;
    for (std::string line; std::getline(lines, line);) {
      CHECK(columns(line) <= width);
      count += line.ends_with(" wk");
    }
    CHECK(count == 60);
  }
}
